using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;

namespace Coldwright.Safety.Relief;

/// <summary>State of a cold content while its relief device is open, at the temperature that asks for the largest opening.</summary>
/// <remarks>
/// At a constant pressure heat Q drives out the mass Q / (v (dh/dv)_p). The opening needed goes as sqrt(v) / (v (dh/dv)_p). Where the content boils
/// (a pure fluid: v (dh/dv)_p = h_fg v_g/(v_g - v_l)) the largest value while it boils decides; above the critical pressure the largest value along
/// the isobar (the form that ISO 21013-3 uses there, from memory).
/// </remarks>
/// <param name="TemperatureK">Relieving temperature, K.</param>
/// <param name="HeatPerMassJPerKg">Heat that drives out a kilogram, v (dh/dv)_p, J/kg.</param>
/// <param name="SpecificVolumeM3PerKg">Of what leaves, m3/kg.</param>
/// <param name="Gas">The gas for the sizing equations.</param>
public sealed record ReliefCondition(double TemperatureK, double HeatPerMassJPerKg, double SpecificVolumeM3PerKg, ReliefGas Gas)
{
    private const int Points = 60;

    /// <summary>The deciding state along an isobar.</summary>
    /// <param name="model">Fluid model.</param>
    /// <param name="z">Mole fractions.</param>
    /// <param name="pressurePa">Relieving pressure, Pa absolute.</param>
    /// <param name="coldK">Start of the isobar, K; <paramref name="warmK"/> its end.</param>
    /// <param name="warmK">End of the isobar, K.</param>
    /// <exception cref="Numerics.SolveException">No equilibrium along the whole isobar.</exception>
    public static ReliefCondition Worst(HelmholtzModel model, double[] z, double pressurePa, double coldK, double warmK)
    {
        Guard.Positive(pressurePa, nameof(pressurePa), "Pa");
        Guard.Within(coldK, 20, warmK, nameof(coldK), "K");
        var molarMass = model.Substances.Zip(z).Sum(p => p.First.MolarMass * p.Second);
        var flash = new Flash(model);
        var warm = flash.TemperaturePressure(warmK, 101_325, z).Phases[0];
        var k = Math.Clamp(warm.MolarHeatCapacity / warm.MolarIsochoricHeatCapacity, 1.01, 1.67);
        var states = Isobar(flash, z, pressurePa, coldK, warmK);
        // While there is liquid to boil, it decides; vapour alone asks for a little more but is soon gone.
        var boils = states.Any(s => s.Boils);
        ReliefCondition? worst = null;
        double most = 0;
        for (var i = 1; i < states.Count; i++)
        {
            var (a, b) = (states[i - 1], states[i]);
            // A step without growth in volume drives nothing out.
            if (a.Boils != boils || !(b.Volume > a.Volume && b.Enthalpy > a.Enthalpy)) continue;
            var heat = b.Volume * (b.Enthalpy - a.Enthalpy) / (b.Volume - a.Volume) / molarMass;
            var volume = b.Volume / molarMass;
            if (Math.Sqrt(volume) / heat <= most) continue;
            most = Math.Sqrt(volume) / heat;
            var gas = new ReliefGas(b.TemperatureK, pressurePa * b.Volume / (model.GasConstant * b.TemperatureK), molarMass, k);
            worst = new(b.TemperatureK, heat, volume, gas);
        }
        return worst ?? throw new Numerics.SolveException(new(Numerics.SolveStatus.NoSolution, states.Count, double.NaN,
            $"no two neighbouring states between {coldK:0.0} K and {warmK:0.0} K at {pressurePa:0} Pa from which to size a relief device"));
    }

    private static List<(double TemperatureK, double Volume, double Enthalpy, bool Boils)> Isobar(Flash flash, double[] z, double pressurePa, double coldK, double warmK)
    {
        var states = new List<(double TemperatureK, double Volume, double Enthalpy, bool Boils)>(Points + 2);
        for (var i = 0; i <= Points; i++)
        {
            // Points at which the solver gives up are left out; the neighbours stand in.
            var t = coldK * Math.Pow(warmK / coldK, (double)i / Points);
            if (flash.TrySolve(t, pressurePa, z)) states.Add((t, 1 / flash.Density(), flash.Enthalpy(), flash.PhaseCount > 1 && flash.VapourFraction() > 0));
        }
        if (flash.Model.Count == 1 && PureSaturation.AtPressure(flash.Model, pressurePa) is { } s && s.TemperatureK > coldK && s.TemperatureK < warmK)
        {
            states.RemoveAll(p => Math.Abs(p.TemperatureK - s.TemperatureK) < 1e-6);
            var phases = flash.PressureVapourFraction(pressurePa, 0.5, z).Phases;
            states.AddRange(phases.Select(p => (s.TemperatureK, 1 / p.MolarDensity, p.MolarEnthalpy, p.Kind == PhaseKind.Liquid)));
            states.Sort((a, b) => (a.TemperatureK, a.Volume).CompareTo((b.TemperatureK, b.Volume)));
        }
        return states;
    }
}
