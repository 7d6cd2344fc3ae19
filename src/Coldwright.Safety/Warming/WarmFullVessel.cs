using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Substances;
using Coldwright.Numerics.Roots;

namespace Coldwright.Safety.Warming;

/// <summary>Pressure that a shut vessel reaches when its cold content warms at constant volume.</summary>
/// <remarks>The reference equations (see docs/theory/reference-model.md). At a thousand bar and more they are used beyond or near the end of
/// their data; the message, that nothing in a workshop holds it, does not depend on the digits.</remarks>
public static class WarmFullVessel
{
    /// <summary>Atmospheric pressure at which the liquid was let in, Pa.</summary>
    public const double AtmospherePa = 101_325;

    /// <summary>Pressure after warming, Pa absolute, of a vessel partly filled with liquid at its normal boiling point, its vapour above it.</summary>
    /// <param name="substance">Canonical name of a pure substance.</param>
    /// <param name="fill">Share of the volume that is liquid, 0..1.</param>
    /// <param name="warmK">Temperature after warming, K.</param>
    public static double PressurePa(string substance, double fill, double warmK)
    {
        Guard.Within(fill, 0, 1, nameof(fill), "");
        Guard.Positive(warmK, nameof(warmK), "K");
        var model = ReferenceModel.Create([substance]);
        var point = NormalBoiling(model);
        return Warmed(model, [1], fill * point.LiquidDensity + (1 - fill) * point.VapourDensity, warmK);
    }

    /// <summary>Share of the volume that may be liquid at its normal boiling point so that a warm shut vessel stays at or below a pressure; 0..1.</summary>
    /// <param name="substance">Canonical name of a pure substance.</param>
    /// <param name="allowedPa">Allowed pressure, Pa absolute.</param>
    /// <param name="warmK">Temperature after warming, K.</param>
    public static double LargestFill(string substance, double allowedPa, double warmK)
    {
        Guard.Positive(allowedPa, nameof(allowedPa), "Pa");
        if (PressurePa(substance, 0, warmK) >= allowedPa) return 0;
        if (PressurePa(substance, 1, warmK) <= allowedPa) return 1;
        return Brent.Solve(f => Math.Log(PressurePa(substance, f, warmK) / allowedPa), 0, 1, 1e-9);
    }

    /// <summary>Pressure after warming, Pa absolute, of a space quite full of a mixture's liquid; null when that state cannot be found or is not liquid.</summary>
    /// <param name="mixture">What is shut in.</param>
    /// <param name="coldK">Temperature when it was shut in, K.</param>
    /// <param name="coldPa">Pressure then, Pa absolute.</param>
    /// <param name="warmK">Temperature after warming, K.</param>
    public static double? LiquidFullPa(Composition mixture, double coldK, double coldPa, double warmK)
    {
        Guard.Positive(warmK, nameof(warmK), "K");
        var (names, z) = Present(mixture);
        var model = ReferenceModel.Create(names);
        var flash = new Flash(model);
        if (!flash.TrySolve(coldK, coldPa, z) || flash.VapourFraction() > 0) return null;
        return Warmed(model, z, flash.Density(), warmK);
    }

    private static SaturationPoint NormalBoiling(HelmholtzModel model) => PureSaturation.AtPressure(model, AtmospherePa)
        ?? throw new ArgumentException($"{model.Substances[0].Name} has no boiling point at {AtmospherePa} Pa");

    // A warm space may still hold two phases (propane, butane): the flash at constant volume is a root in pressure of the overall density.
    private static double Warmed(HelmholtzModel model, double[] z, double density, double warmK)
    {
        var e = model.CreateEvaluation();
        e.SetIsotherm(warmK, z);
        var single = model.GasConstant * warmK * e.ReducedPressure(density, out _);
        if (model.Count == 1 && warmK > model.Substances[0].CriticalTemperatureK) return single;
        var flash = new Flash(model);
        if (single > 0 && flash.TrySolve(warmK, single, z) && flash.PhaseCount == 1 && Math.Abs(flash.Density() / density - 1) < 1e-6) return single;
        if (model.Count == 1)
        {
            var point = PureSaturation.AtTemperature(model, warmK);
            return density >= point.VapourDensity && density <= point.LiquidDensity ? point.PressurePa : single;
        }
        double Excess(double lnP)
        {
            if (!flash.TrySolve(warmK, Math.Exp(lnP), z))
                throw new Numerics.SolveException(new(Numerics.SolveStatus.NoSolution, 0, double.NaN, $"no equilibrium at {warmK:0.0} K and {Math.Exp(lnP):0} Pa while warming a full space"));
            return Math.Log(flash.Density() / density);
        }
        return Math.Exp(Brent.Solve(Excess, Math.Log(1e3), Math.Log(1e9), 1e-9));
    }

    private static (string[] Names, double[] Z) Present(Composition mixture)
    {
        var present = mixture.Names.Zip(mixture.MoleFractions).Where(p => p.Second > 0).ToArray();
        return (present.Select(p => p.First).ToArray(), present.Select(p => p.Second).ToArray());
    }
}
