using System.Collections.Concurrent;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Substances;

namespace Coldwright.Fluids.EquationsOfState.PengRobinson;

/// <summary>The translation c (m3/mol) that makes the cubic's liquid as dense as the reference equation's.</summary>
public static class VolumeTranslation
{
    /// <summary>Reduced temperature of the match.</summary>
    public const double AnchorReducedTemperature = 0.7;

    private static readonly ConcurrentDictionary<string, double> Cache = new();

    /// <summary>
    /// Untranslated saturated liquid volume less the reference one at 0.7 of the critical temperature, each at its own
    /// model's vapour pressure.
    /// </summary>
    public static double Of(Substance substance) => Cache.GetOrAdd(substance.Name, _ =>
    {
        double t = AnchorReducedTemperature * substance.CriticalTemperatureK;
        var cubic = new PengRobinsonModel([substance], [new CubicComponent(substance.CriticalTemperatureK, substance.CriticalPressurePa, substance.AcentricFactor, 0)],
            [0], AlphaKind.BostonMathias, []);
        var ours = PureSaturation.AtTemperature(cubic, t);
        var reference = PureSaturation.AtTemperature(new MultiFluidModel([substance], [], []), t);
        return 1 / ours.LiquidDensity - 1 / reference.LiquidDensity;
    });
}
