using Coldwright.Machine.Flow;
using Coldwright.Machine.HeatTransfer;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;

namespace Coldwright.Machine.ColdVessel;

/// <summary>
/// A coil with boiling mixture and the content of the cold vessel around it (docs/theory/coil-and-vessel.md). Quasi-steady: the
/// level is given and moves slowly.
/// </summary>
public static class ColdVesselModel
{
    private const double LeastHeatW = 1e-3;

    /// <summary>What the model rests on, with sources and uncertainties.</summary>
    public static IReadOnlyList<Correlation> Correlations { get; } =
    [
        FilmCondensation.NusseltCorrelation, RowCorrection.Correlation, FreeConvection.HorizontalCylinderCorrelation, FreeConvection.VerticalPlateCorrelation,
        Boiling.GungorWintertonCorrelation, MixtureCorrection.SilverBellGhalyCorrelation, SinglePhase.NusseltCoiledCorrelation,
        TwoPhaseGradient.MuellerSteinhagenHeckCorrelation, Friction.CoiledCorrelation,
    ];

    /// <summary>Heat, condensing rate, outlet, profile.</summary>
    /// <param name="input">Coil, vessel, mixture, content.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">A value outside its range.</exception>
    /// <exception cref="SolveException">The mixture is not colder than the content, loses its pressure, or the liquid would freeze.</exception>
    public static ColdVesselResult Solve(ColdVesselInput input, CancellationToken cancel = default) => Solve(input, double.NaN, cancel);

    // liquidGuessK: near where the liquid's temperature is to be looked for, or not a number
    internal static ColdVesselResult Solve(ColdVesselInput input, double liquidGuessK, CancellationToken cancel)
    {
        input.Check();
        RequireColder(input);
        var march = new CoilMarch(input);
        int runs = 0;
        double liquidK = SteadyLiquid.Temperature(input, march, liquidGuessK, ref runs, cancel);
        var profile = new List<CoilStation>(input.Options.Cells + 8);
        var sums = march.Run(liquidK, profile, cancel);
        var result = Build(input, march, sums, liquidK, profile, runs + 1);
        return input.Options.Band ? result with { Band = ColdVesselDoubt.Band(input, result, sums, cancel) } : result;
    }

    /// <summary>The same coil and content with the mixture's inlet found that makes a given heat flow: what difference the coil needs.</summary>
    /// <param name="input">As for <see cref="Solve"/>; the mixture's enthalpy is not used.</param>
    /// <param name="heatW">Heat into the mixture, W, above 0.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="SolveException">Even the coldest mixture of its table does not take up so much.</exception>
    public static ColdVesselResult SolveForHeat(ColdVesselInput input, double heatW, CancellationToken cancel = default)
    {
        VesselGuard.Within(heatW, 1e-3, 1e6, "W", nameof(heatW));
        var quick = input with { Options = input.Options with { Band = false } };
        var table = input.Mixture.Table;
        double p = input.Mixture.PressurePa, warmest = input.Product.BubbleK ?? input.LiquidK ?? input.Product.WarmestK, low = table.Range(p).Lowest;
        // colder than this the liquid would freeze solid, or the table ends
        double coldest = Math.Max(table.Temperature(low, p, out _), input.Product.ColdestK), start = table.Enthalpy(coldest, p), end = table.Enthalpy(warmest, p);
        ColdVesselInput With(double h) => quick with { Mixture = input.Mixture with { MolarEnthalpy = h } };
        double Excess(double h) => h >= end ? -heatW : Solve(With(h), cancel).HeatW - heatW;
        double most = Excess(start) + heatW;
        if (most < heatW)
            throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 1, heatW - most,
                $"the coil takes up at most {most:0.###} W, with the mixture entering at {SpokenAmount.Temperature(coldest, "0.##")}; {heatW:0.###} W asked for: more coil, more flow or a higher vessel pressure is needed"));
        double found = Brent.Solve(Excess, start, most - heatW, end, -heatW, 1e-10 * (end - start));
        return Solve(With(found) with { Options = input.Options }, cancel);
    }

    private static void RequireColder(ColdVesselInput input)
    {
        double content = input.Product.BubbleK ?? input.LiquidK!.Value, inlet = input.Mixture.TemperatureK;
        if (inlet < content - 1e-6) return;
        throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 0, inlet - content,
            $"the mixture enters the coil at {SpokenAmount.Temperature(inlet, "0.##")}, not colder than the content at {SpokenAmount.Temperature(content, "0.##")}: nothing condenses"));
    }

    internal static double FeedEnthalpy(ColdVesselInput input)
    {
        var product = input.Product;
        return input.FeedK is { } t ? product.Gas(t).MassEnthalpy : product.BubbleEnthalpy + product.HeatOfCondensation;
    }

    private static ColdVesselResult Build(ColdVesselInput input, CoilMarch march, CoilSums sums, double liquidK, List<CoilStation> profile, int runs)
    {
        var (product, mixture) = (input.Product, input.Mixture);
        double condensed = sums.CondensedKgPerS, feed = FeedEnthalpy(input), liquidH = product.Liquid(liquidK).MassEnthalpy, gain = 0, desuperheating = 0;
        bool steady = input.LiquidK is null;
        if (product.IsDense)
        {
            // the content stays as it is when as much feed is let in as this heat brings to its temperature
            condensed = feed > liquidH ? sums.LiquidW / (feed - liquidH) : 0;
            gain = feed > liquidH ? 0 : -sums.LiquidW;
        }
        else
        {
            desuperheating = condensed * (feed - product.BubbleEnthalpy - product.HeatOfCondensation);
            gain = condensed * (feed - liquidH) - sums.CondensingW - sums.LiquidW;
        }
        var outlet = mixture.Table.At(sums.OutletEnthalpy, sums.OutletPressurePa);
        double taken = mixture.MolarFlow * (sums.OutletEnthalpy - mixture.MolarEnthalpy), width = new WallPath(input.Coil, input.Vessel, liquidK).OutsideWidthM;
        double submerged = product.IsDense ? 1 : input.Coil.SubmergedShare(input.LevelM);
        // with all coil under liquid no heat flows: errors are then judged against a milliwatt
        double heat = sums.HeatW, given = condensed * (feed - liquidH) - (steady ? 0 : gain), error = (taken - given) / Math.Max(Math.Abs(heat), LeastHeatW);
        var result = new ColdVesselResult
        {
            HeatW = heat, CondensingW = sums.CondensingW, LiquidW = sums.LiquidW, DesuperheatingW = desuperheating, CondensedKgPerS = condensed,
            SaturationK = product.BubbleK, LiquidK = liquidK, Steady = steady, LiquidGainW = steady ? 0 : gain,
            InletK = mixture.TemperatureK, OutletK = outlet.TemperatureK, OutletEnthalpy = sums.OutletEnthalpy, OutletPressurePa = sums.OutletPressurePa,
            OutletVapourFraction = outlet.VapourFraction, PressureDropPa = mixture.PressurePa - sums.OutletPressurePa,
            ConductanceWPerK = sums.CondensingUA + sums.LiquidUA, CondensingConductanceWPerK = sums.CondensingUA,
            CondensingAreaM2 = (1 - submerged) * input.Coil.LengthM * width, SubmergedAreaM2 = submerged * input.Coil.LengthM * width,
            EnergyError = error, Profile = profile, Warnings = [], Report = new SolveReport(SolveStatus.Solved, runs, Math.Abs(error)),
        };
        return result with { Warnings = ColdVesselWarnings.Of(input, result, sums) };
    }
}
