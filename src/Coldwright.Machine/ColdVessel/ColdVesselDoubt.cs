using Coldwright.Machine.HeatTransfer;

namespace Coldwright.Machine.ColdVessel;

/// <summary>Carries the correlations' uncertainty to the result: one further solve for each of them.</summary>
internal static class ColdVesselDoubt
{
    // a stagnant gas space that holds back its lighter part is beyond what the mixture correction was made for; our estimate
    private const double GlideUncertainty = 0.5;

    /// <summary>Glide from which the content counts as a mixture, K.</summary>
    public const double LeastGlideK = 0.05;

    /// <summary>Of the condensing film, relative: film law, row rule and, with impurities, the gas held back.</summary>
    public static double CondensingUncertainty(ColdVesselInput input)
    {
        double film = FilmCondensation.NusseltCorrelation.RelativeUncertainty, sum = film * film;
        if (input.Coil is { Position: CoilPosition.Inside, Turns: > 1 }) sum += RowCorrection.Correlation.RelativeUncertainty * RowCorrection.Correlation.RelativeUncertainty;
        if (input.Product.GlideK > LeastGlideK) sum += GlideUncertainty * GlideUncertainty;
        return Math.Sqrt(sum);
    }

    // differences between solves on one grid: a coarse one will do
    private const int MostCells = 12;

    public static ColdVesselBand Band(ColdVesselInput input, ColdVesselResult answer, CoilSums sums, CancellationToken cancel)
    {
        var options = input.Options with { Band = false, Cells = Math.Min(MostCells, input.Options.Cells) };
        var centre = ColdVesselModel.Solve(input with { Options = options }, answer.LiquidK, cancel);
        var changed = new List<ColdVesselOptions>();
        double heat = Math.Abs(sums.HeatW);
        if (heat > 0 && options.Inside.FixedFilm is null) changed.Add(options with { Inside = options.Inside with { FilmScale = options.Inside.FilmScale * (1 + sums.FilmDoubtW / heat) } });
        if (centre.CondensingAreaM2 > 0 && options.Condensing.FixedFilm is null) changed.Add(options with { Condensing = options.Condensing with { FilmScale = options.Condensing.FilmScale * (1 + CondensingUncertainty(input)) } });
        double free = (input.Coil.Position == CoilPosition.Around ? FreeConvection.VerticalPlateCorrelation : FreeConvection.HorizontalCylinderCorrelation).RelativeUncertainty;
        if (centre.SubmergedAreaM2 > 0 && options.Convection.FixedFilm is null) changed.Add(options with { Convection = options.Convection with { FilmScale = options.Convection.FilmScale * (1 + free) } });
        if (options.PressureDrop && sums.FrictionPa > 0) changed.Add(options with { Inside = options.Inside with { FrictionScale = options.Inside.FrictionScale * (1 + sums.FrictionDoubtPa / sums.FrictionPa) } });
        double[] squares = new double[6];
        foreach (var o in changed)
        {
            var r = ColdVesselModel.Solve(input with { Options = o }, centre.LiquidK, cancel);
            double[] moved =
            [
                r.HeatW - centre.HeatW, r.CondensedKgPerS - centre.CondensedKgPerS, r.OutletK - centre.OutletK, r.LiquidK - centre.LiquidK,
                r.ConductanceWPerK - centre.ConductanceWPerK, r.PressureDropPa - centre.PressureDropPa,
            ];
            for (int i = 0; i < squares.Length; i++) squares[i] += moved[i] * moved[i];
        }
        return new ColdVesselBand(Math.Sqrt(squares[0]), Math.Sqrt(squares[1]), Math.Sqrt(squares[2]), Math.Sqrt(squares[3]), Math.Sqrt(squares[4]), Math.Sqrt(squares[5]));
    }
}
