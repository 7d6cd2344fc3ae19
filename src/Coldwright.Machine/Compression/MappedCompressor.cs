using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;

namespace Coldwright.Machine.Compression;

/// <summary>
/// A compressor known by its rating sheet, on any gas: volume flow and overall isentropic efficiency from the translated map,
/// shell heat from the same balance with the room as the physical model. Not thread-safe.
/// </summary>
public sealed class MappedCompressor
{
    // where the mean shell temperature lies between suction and discharge gas; our assumption
    private const double RotaryShell = 1, ReciprocatingShell = 0.6;
    // one standard deviation of carrying an efficiency from one gas to another; our assumption
    private const double Transfer = 0.07;

    private readonly TranslatedMap _map;
    private readonly CompressorMachine _machine;
    private readonly Flash _flash;
    private readonly double[] _z;

    /// <param name="map">The translated sheet.</param>
    /// <param name="machine">Kind, shell, limits; the displacement only for the volumetric efficiency shown.</param>
    /// <param name="model">Fluid model.</param>
    /// <param name="z">Mole fractions.</param>
    public MappedCompressor(TranslatedMap map, CompressorMachine machine, HelmholtzModel model, IReadOnlyList<double> z)
    {
        machine.Check();
        (_map, _machine, _flash) = (map, machine, new Flash(model));
        _z = InputCheck.Fractions(z, model.Count, nameof(z));
    }

    /// <summary>The compressor at a duty.</summary>
    /// <param name="duty">Pressures, suction temperature, room.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="Numerics.SolveException">The states have no answer.</exception>
    public CompressorPerformance Run(CompressorDuty duty, CancellationToken cancel = default)
    {
        duty.Check();
        cancel.ThrowIfCancellationRequested();
        double ratio = duty.DischargePressurePa / duty.SuctionPressurePa;
        var suction = _flash.TemperaturePressure(duty.SuctionTemperatureK, duty.SuctionPressurePa, _z);
        var end = _flash.PressureEntropy(duty.DischargePressurePa, suction.MolarEntropy, _z, duty.SuctionTemperatureK * Math.Pow(ratio, 0.17));
        double n = _map.VolumeFlow.At(ratio) * suction.MolarDensity, efficiency = _map.OverallIsentropic.At(ratio);
        double electrical = n * (end.MolarEnthalpy - suction.MolarEnthalpy) / efficiency;
        var (discharge, shellK) = Discharge(duty, suction, n, electrical);
        double room = ToRoom(shellK, duty.RoomTemperatureK);
        double? current = _machine.SupplyVoltageV is { } v ? electrical / (v * _machine.PowerFactor) : null;
        var limits = (_machine.Limits ?? new CompressorLimits()).Judge(discharge.TemperatureK, double.NaN, shellK, duty.SuctionPressurePa, duty.DischargePressurePa, electrical, current, null);
        return new CompressorPerformance
        {
            MolarFlow = n,
            MassFlow = n * suction.MolarMass,
            VolumetricEfficiency = _map.VolumeFlow.At(ratio) / (_machine.DisplacementM3 * _machine.SynchronousSpeedRevPerS),
            OverallIsentropicEfficiency = efficiency,
            ElectricalPowerW = electrical,
            CurrentA = current,
            ShellHeatW = room,
            ShellTemperatureK = shellK,
            Suction = suction,
            Discharge = discharge,
            ValveTemperatureK = discharge.TemperatureK,
            Path = [("suction port", Point(suction)), ("discharge port", Point(discharge))],
            EnergyBalanceError = (electrical - n * (discharge.MolarEnthalpy - suction.MolarEnthalpy) - room) / electrical,
            FlowUncertainty = Math.Sqrt(_map.VolumeFlow.RelativeRms * _map.VolumeFlow.RelativeRms + Transfer * Transfer),
            PowerUncertainty = Math.Sqrt(_map.OverallIsentropic.RelativeRms * _map.OverallIsentropic.RelativeRms + Transfer * Transfer),
            Limits = limits,
            Warnings = Warnings(duty, ratio, limits),
        };
    }

    private (FluidState Discharge, double ShellK) Discharge(CompressorDuty duty, FluidState suction, double n, double electrical)
    {
        double share = _machine.Traits.Kind == CompressorKind.Rotary ? RotaryShell : ReciprocatingShell, guess = duty.SuctionTemperatureK + 80;
        FluidState? found = null;
        // shell from the discharge that the shell's own loss leaves: one root in the shell temperature
        double Off(double shellK)
        {
            double enthalpy = suction.MolarEnthalpy + (electrical - ToRoom(shellK, duty.RoomTemperatureK)) / n;
            found = _flash.PressureEnthalpy(duty.DischargePressurePa, enthalpy, _z, guess);
            guess = found.TemperatureK;
            return shellK - duty.SuctionTemperatureK - share * (found.TemperatureK - duty.SuctionTemperatureK);
        }

        double low = Math.Min(duty.SuctionTemperatureK, duty.RoomTemperatureK) - 20, fLow = Off(low);
        // warmer than the gas would be without any loss the shell cannot get
        double high = low - fLow + 20;
        double shell = Brent.Solve(Off, low, fLow, high, Off(high), 1e-6);
        Off(shell);
        return (found!, shell);
    }

    private double ToRoom(double shellK, double roomK) => _machine.Cooling.HeatToRoom(shellK, roomK, _machine.ShellAreaM2);

    private List<Spoken> Warnings(CompressorDuty duty, double ratio, IReadOnlyList<LimitFinding> limits)
    {
        List<Spoken> said = [.. _flash.Model.Warnings, .. _map.Warnings];
        foreach (var finding in limits.Where(f => f.Exceeded)) said.Add(Spoken.Of($"compressor: {finding.Sentence}"));
        var range = _map.VolumeFlow;
        if (ratio < range.LowestRatio || ratio > range.HighestRatio) said.Add(FormattableString.Invariant(
            $"compressor: pressure ratio {ratio:0.##} is outside the rating sheet's {range.LowestRatio:0.##} to {range.HighestRatio:0.##}; the efficiencies of its end are used"));
        var (lowPa, highPa) = _map.SuctionPressureRange;
        if (duty.SuctionPressurePa < lowPa || duty.SuctionPressurePa > highPa) said.Add(Spoken.Of(
            $"compressor: suction pressure {Absolute(duty.SuctionPressurePa)} is outside the rating sheet's {Absolute(lowPa)} to {Absolute(highPa)}"));
        said.Add("compressor: efficiencies rated on one refrigerant are used on another gas at equal pressure ratio; what differs in clearance, leak and heating is only in the band");
        return said;
    }

    private static SpokenAmount Absolute(double pressurePa) => SpokenAmount.Pressure(pressurePa, "0.##");

    private static GasPoint Point(FluidState s) => new(s.TemperatureK, s.PressurePa, s.MolarDensity, s.MolarEnthalpy, s.MolarEntropy);
}
