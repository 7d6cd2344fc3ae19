using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;

namespace Coldwright.Machine.Compression;

/// <summary>
/// Hermetic compressor on any gas at any pressures, by a lumped physical model (docs/theory/compressor.md): cylinder with
/// clearance, leak and port losses; friction; motor with slip; and one heat node, the shell, which takes the losses, warms the
/// suction gas, exchanges with the discharge gas and cools to the room. Not thread-safe: one object per thread.
/// </summary>
public sealed class HermeticCompressor
{
    // heat that is rounding, over the electrical power
    private const double Nothing = 1e-12;
    // K
    private const double ShellTolerance = 1e-9, NearStepK = 0.5;
    private const int MostNearSteps = 3;

    private readonly CompressorMachine _machine;
    private readonly Flash _flash;
    // kept from run to run: the next duty is often a neighbour of the last
    private readonly GasPath _gas;
    private readonly double[] _z;
    private readonly double _molarMass;
    private CylinderCycle _cylinder;
    private double _shellK = double.NaN;

    /// <param name="machine">The compressor.</param>
    /// <param name="model">Fluid model.</param>
    /// <param name="z">Mole fractions in the model's order, sum 1.</param>
    /// <exception cref="ArgumentException">A value is outside its range.</exception>
    public HermeticCompressor(CompressorMachine machine, HelmholtzModel model, IReadOnlyList<double> z)
    {
        machine.Check();
        (_machine, _flash) = (machine, new Flash(model));
        _z = InputCheck.Fractions(z, model.Count, nameof(z));
        _gas = new GasPath(_flash, _z);
        for (int i = 0; i < _z.Length; i++) _molarMass += _z[i] * model.Substances[i].MolarMass;
        _cylinder = new CylinderCycle(_machine, _gas, _molarMass);
    }

    private HermeticCompressor(CompressorMachine machine, double[] z, HermeticCompressor like)
    {
        machine.Check();
        (_machine, _flash, _z, _shellK) = (machine, like._flash, z, like._shellK);
        _gas = ReferenceEquals(z, like._z) ? like._gas : new GasPath(_flash, z);
        for (int i = 0; i < z.Length; i++) _molarMass += z[i] * _flash.Model.Substances[i].MolarMass;
        _cylinder = new CylinderCycle(_machine, _gas, _molarMass, like._cylinder);
    }

    /// <summary>Another machine on the same gas, which starts from the states of this one; the two share a flash, so that only one may run at a time.</summary>
    /// <param name="machine">The other machine.</param>
    /// <exception cref="ArgumentException">A value is outside its range.</exception>
    public HermeticCompressor With(CompressorMachine machine) => new(machine, _z, this);

    /// <summary>The same machine on a gas of another composition, which starts from the states of this one; the two share a flash, so that only one may run at a time.</summary>
    /// <param name="z">Mole fractions in the model's order, sum 1.</param>
    /// <exception cref="ArgumentException">A value is outside its range.</exception>
    public HermeticCompressor With(IReadOnlyList<double> z) => new(_machine, InputCheck.Fractions(z, _flash.Model.Count, nameof(z)), this);

    /// <summary>The compressor at a duty.</summary>
    /// <param name="duty">Pressures, suction temperature, room.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">It delivers nothing there, or the states have no answer; the report says which.</exception>
    public CompressorPerformance Run(CompressorDuty duty, CancellationToken cancel = default)
    {
        duty.Check();
        var suction = _flash.TemperaturePressure(duty.SuctionTemperatureK, duty.SuctionPressurePa, _z);
        _gas.Wet = HasLiquid(suction);
        bool done = false;
        try
        {
            var answer = Run(duty, suction, _gas, cancel);
            done = true;
            return answer;
        }
        catch (SolveException e) when (!e.Message.StartsWith("compressor", StringComparison.Ordinal))
        {
            // a flash inside: say which part asked for it, and where
            throw new SolveException(e.Report.Telling(
                $"compressor from {SpokenAmount.Pressure(duty.SuctionPressurePa, "0.###")} to {SpokenAmount.Pressure(duty.DischargePressurePa, "0.###")}, suction at {SpokenAmount.Temperature(duty.SuctionTemperatureK, "0.#")}: {e.Report.Told}"));
        }
        finally
        {
            // what did not work is no start for another duty
            if (!done) (_cylinder, _shellK) = (new CylinderCycle(_machine, _gas, _molarMass), double.NaN);
        }
    }

    private CompressorPerformance Run(CompressorDuty duty, FluidState suction, GasPath gas, CancellationToken cancel)
    {
        var (shellK, at, port) = Solve(duty, gas, cancel);
        if (!gas.Wet && HasLiquid(_flash.TemperaturePressure(at.Compressed.TemperatureK, at.Compressed.PressurePa, _z)))
        {
            // a gas that condenses when it is compressed (pentane does): every state with its liquid
            gas.Wet = true;
            (shellK, at, port) = Solve(duty, gas, cancel);
        }
        var discharge = _flash.TemperaturePressure(port.TemperatureK, port.PressurePa, _z);
        return Report(duty, suction, at, discharge, shellK, gas);
    }

    private (double ShellK, CylinderState At, GasPoint Port) Solve(CompressorDuty duty, GasPath gas, CancellationToken cancel)
    {
        var suction = gas.At(duty.SuctionTemperatureK, duty.SuctionPressurePa);
        CylinderState? last = null;
        GasPoint port = default;
        // heat into the shell less heat out of it, W: falls as the shell warms
        double Surplus(double shellK)
        {
            cancel.ThrowIfCancellationRequested();
            var traits = _machine.Traits;
            var heated = gas.At(suction.TemperatureK + traits.SuctionHeating * (shellK - suction.TemperatureK), suction.PressurePa, suction.MolarDensity);
            last = _cylinder.Solve(suction, heated, duty.DischargePressurePa);
            port = gas.At(last.Valve.TemperatureK + traits.DischargeExchange * (shellK - last.Valve.TemperatureK), duty.DischargePressurePa, last.Valve.MolarDensity, GasPlace.Discharge);
            return last.FrictionW + last.MotorLossW
                + last.NetFlow * (last.Valve.MolarEnthalpy - port.MolarEnthalpy - heated.MolarEnthalpy + suction.MolarEnthalpy)
                - ToRoom(shellK, duty.RoomTemperatureK);
        }

        double low = Math.Min(duty.SuctionTemperatureK, duty.RoomTemperatureK);
        if (!double.IsNaN(_shellK) && _shellK > low + NearStepK && Near(Surplus, low) is { } near)
        {
            Surplus(near);
            return (_shellK = near, last!, port);
        }
        double fLow = Surplus(low);
        // a machine without losses has nothing to balance but rounding
        if (Math.Abs(fLow) <= Nothing * last!.ElectricalW) return (low, last, port);
        double high = Math.Max(duty.SuctionTemperatureK, duty.RoomTemperatureK) + 40, fHigh = Surplus(high);
        while (fHigh > 0)
        {
            if (high > 900) throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 0, fHigh,
                $"compressor: the shell finds no balance below {SpokenAmount.Temperature(high, "0")}; {fHigh:0.#} W remain. Lower the pressure ratio or cool the shell"));
            (low, fLow) = (high, fHigh);
            fHigh = Surplus(high += 60);
        }
        _shellK = Brent.Solve(Surplus, low, fLow, high, fHigh, ShellTolerance);
        Surplus(_shellK);
        return (_shellK, last!, port);
    }

    // the last duty's shell temperature is often nearly this one's; null: it is not
    private double? Near(Func<double, double> surplus, double lowest)
    {
        double a = _shellK, fa = surplus(a), step = fa > 0 ? NearStepK : -NearStepK;
        for (int i = 0; i < MostNearSteps; i++, step *= 5)
        {
            double b = Math.Max(a + step, lowest), fb = surplus(b);
            if (fb > 0 != fa > 0) return Brent.Solve(surplus, a, fa, b, fb, ShellTolerance);
            if (b == lowest) return null;
            (a, fa) = (b, fb);
        }
        return null;
    }

    private double ToRoom(double shellK, double roomK) => _machine.Cooling.HeatToRoom(shellK, roomK, _machine.ShellAreaM2);

    private CompressorPerformance Report(CompressorDuty duty, FluidState suction, CylinderState at, FluidState discharge, double shellK, GasPath gas)
    {
        var traits = _machine.Traits;
        double n = at.NetFlow, electrical = at.ElectricalW, room = ToRoom(shellK, duty.RoomTemperatureK);
        double Isentropic(GasPoint from, double pressurePa) => n * (gas.AtEntropy(pressurePa, from.MolarEntropy, at.Compressed.TemperatureK, GasPlace.Compressed).MolarEnthalpy - from.MolarEnthalpy);
        var start = new GasPoint(suction.TemperatureK, suction.PressurePa, suction.MolarDensity, suction.MolarEnthalpy, suction.MolarEntropy);
        double ideal = Isentropic(start, duty.DischargePressurePa), heated = Isentropic(at.Heated, duty.DischargePressurePa);
        double throttled = Isentropic(at.Throttled, at.Compressed.PressurePa);
        double? current = _machine.SupplyVoltageV is { } v ? electrical / (v * _machine.PowerFactor) : null;
        double load = at.ShaftW / _machine.MotorRatingW;
        var limits = (_machine.Limits ?? new CompressorLimits()).Judge(discharge.TemperatureK, at.Valve.TemperatureK, shellK,
            duty.SuctionPressurePa, duty.DischargePressurePa, electrical, current, load);
        var end = new GasPoint(discharge.TemperatureK, discharge.PressurePa, discharge.MolarDensity, discharge.MolarEnthalpy, discharge.MolarEntropy);
        return new CompressorPerformance
        {
            MolarFlow = n,
            MassFlow = n * _molarMass,
            VolumetricEfficiency = n / (_machine.DisplacementM3 * at.SpeedRevPerS * suction.MolarDensity),
            OverallIsentropicEfficiency = ideal / electrical,
            MotorEfficiency = at.ShaftW / electrical,
            ShaftSpeedRevPerS = at.SpeedRevPerS,
            ElectricalPowerW = electrical,
            CurrentA = current,
            ShellHeatW = room,
            ShellTemperatureK = shellK,
            Suction = suction,
            Discharge = discharge,
            ValveTemperatureK = at.Valve.TemperatureK,
            Volumetric = new VolumetricFactors(at.Heated.MolarDensity / suction.MolarDensity, at.Throttled.MolarDensity / at.Heated.MolarDensity,
                at.Drawn.MolarDensity / at.Throttled.MolarDensity, at.Clearance, 1 - at.LeakShare),
            Power = new PowerSplit(ideal, heated - ideal, throttled - heated, at.IndicatedW - throttled, at.FrictionW, at.MotorLossW),
            Path = [("suction port", start), ("heated in the shell", at.Heated), ("drawn in", at.Drawn), ("compressed", at.Compressed), ("behind the valve", at.Valve), ("discharge port", end)],
            EnergyBalanceError = (electrical - n * (discharge.MolarEnthalpy - suction.MolarEnthalpy) - room) / electrical,
            FlowUncertainty = traits.FlowUncertainty,
            PowerUncertainty = traits.PowerUncertainty,
            Limits = limits,
            Warnings = Warnings(suction, discharge, at, load, limits),
        };
    }

    private List<Spoken> Warnings(FluidState suction, FluidState discharge, CylinderState at, double load, IReadOnlyList<LimitFinding> limits)
    {
        List<Spoken> said = [.. _flash.Model.Warnings];
        foreach (var finding in limits.Where(f => f.Exceeded)) said.Add(Spoken.Of($"compressor: {finding.Sentence}"));
        if (HasLiquid(suction)) said.Add(Spoken.Of(
            $"compressor: the suction carries liquid ({1 - suction.VapourFraction:0.###} mol/mol at {SpokenAmount.Temperature(suction.TemperatureK, "0.#")}); it washes the oil away and can break a valve"));
        if (HasLiquid(discharge)) said.Add("compressor: part of the gas is liquid at the discharge port");
        if (_machine.ShaftSpeedRevPerS is null && load > 2) said.Add(FormattableString.Invariant(
            $"compressor: the motor would carry {load:0.#} times its rating; beyond about 2 an induction motor stalls (our assumption)"));
        foreach (var s in _flash.Model.Substances.Where(s => at.Compressed.TemperatureK > s.MaximumTemperatureK))
            said.Add(Spoken.Of($"compressor: {SpokenAmount.Temperature(at.Compressed.TemperatureK, "0")} is above the range of the equation of {s.Name} ({SpokenAmount.Temperature(s.MaximumTemperatureK, "0")})"));
        return said;
    }

    private static bool HasLiquid(FluidState state) => state.Phases.Count > 1 || state.Phases[0].Kind != PhaseKind.Vapour;
}
