using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;
using Coldwright.Quantities;

namespace Coldwright.Machine.ColdVessel;

/// <summary>What a march along the coil found. Heat W, amounts kg/s, conductances W/K.</summary>
internal sealed class CoilSums
{
    public double CondensingW, LiquidW, CondensedKgPerS, CondensingUA, LiquidUA, OutletEnthalpy, OutletPressurePa;
    /// <summary>Sum of heat times relative uncertainty of the film in the tube; sum of pressure loss times that of friction; sum of pressure loss.</summary>
    public double FilmDoubtW, FrictionDoubtPa, FrictionPa;
    public bool OutsideTable;
    public double HeatW => CondensingW + LiquidW;
}

/// <summary>
/// The mixture's way through the coil from its inlet, cell by cell: n (h_out - h_in) = U ds x (logarithmic mean of the differences to the content), with U
/// at the cell's mean enthalpy and the surface temperature that balances films and metal. Exact for constant properties, second order for others, and
/// never past the content's temperature whatever the conductance. The cells' borders are put on the level.
/// </summary>
internal sealed class CoilMarch
{
    private const double LeastPressureShare = 0.3;

    private readonly ColdVesselInput _in;
    private readonly OutsideTransfer _outside;
    private readonly FlowChannel _channel;
    private readonly StreamTable _table;
    private readonly double _massFlow;

    // where the last cell's surface stood between mixture and content, and the slope of its balance: the next one starts there
    private double _share, _slope;

    public CoilMarch(ColdVesselInput input)
    {
        _in = input;
        _outside = new OutsideTransfer(input);
        _channel = input.Coil.Channel();
        _table = input.Mixture.Table;
        _massFlow = input.Mixture.MassFlow;
    }

    // one cell: what it is asked and what it answers
    private readonly record struct Question(CoilZone Zone, WallPath Wall, double ContentK, double HeightM, double Enthalpy, double PressurePa, double InletK, double Step);
    private readonly record struct Answer(double HeatPerLength, double WallK, double MixtureK, double OutsideFilm, double InsideFilm, double Conductance, LocalAnswer Local, StreamPoint Point);

    /// <summary>Marches with the liquid (or dense fluid) at a temperature (K); adds stations to a profile when there is one.</summary>
    public CoilSums Run(double liquidK, List<CoilStation>? profile, CancellationToken cancel)
    {
        var (coil, sums) = (_in.Coil, new CoilSums());
        double h = _in.Mixture.MolarEnthalpy, p = _in.Mixture.PressurePa, n = _in.Mixture.MolarFlow, scale = _in.Options.Inside.FrictionScale;
        (_share, _slope) = (0.5, 1.5);
        var inlet = Local(_table.At(h, p), 0);
        double momentum = inlet.MomentumFlux, gradient = inlet.FrictionGradient * scale, position = 0;
        foreach (var (zone, length) in Zones())
        {
            double contentK = zone == CoilZone.Condensing ? _in.Product.BubbleK!.Value : liquidK;
            var wall = new WallPath(coil, _in.Vessel, contentK);
            int cells = Math.Max(4, (int)Math.Ceiling(_in.Options.Cells * length / coil.LengthM));
            double ds = length / cells;
            for (int i = 0; i < cells; i++)
            {
                cancel.ThrowIfCancellationRequested();
                double middle = Pressure(p, 0.5 * ds * gradient);
                var a = Solve(new Question(zone, wall, contentK, Height(position + 0.5 * ds), h, middle, _table.Temperature(h, middle, out _), ds / n));
                gradient = a.Local.FrictionGradient * scale;
                h += ds / n * a.HeatPerLength;
                p = Pressure(p, ds * gradient + a.Local.MomentumFlux - momentum);
                momentum = a.Local.MomentumFlux;
                Count(sums, zone, ds, a);
                profile?.Add(new CoilStation(position + 0.5 * ds, Height(position + 0.5 * ds), zone, a.MixtureK, a.WallK, contentK, a.HeatPerLength,
                    a.InsideFilm, a.OutsideFilm, a.Conductance, middle, a.Point.Quality, a.Point.Phases));
                position += ds;
            }
        }
        p = Pressure(p, Local(_table.At(h, p), 0).MomentumFlux - momentum);
        (sums.OutletEnthalpy, sums.OutletPressurePa) = (h, p);
        return sums;
    }

    private void Count(CoilSums sums, CoilZone zone, double ds, in Answer a)
    {
        double heat = ds * a.HeatPerLength, friction = ds * a.Local.FrictionGradient * _in.Options.Inside.FrictionScale;
        sums.FilmDoubtW += Math.Abs(heat) * a.Local.FilmUncertainty;
        sums.FrictionDoubtPa += friction * a.Local.FrictionUncertainty;
        sums.FrictionPa += friction;
        sums.OutsideTable |= a.Point.Outside;
        if (zone != CoilZone.Condensing)
        {
            sums.LiquidW += heat;
            sums.LiquidUA += ds * a.Conductance;
            return;
        }
        sums.CondensingW += heat;
        sums.CondensingUA += ds * a.Conductance;
        if (heat > 0) sums.CondensedKgPerS += heat / _outside.DripHeat(a.WallK);
    }

    // stretches of tube in the mixture's order
    private IEnumerable<(CoilZone Zone, double LengthM)> Zones()
    {
        var coil = _in.Coil;
        if (_in.Product.IsDense) return [(CoilZone.Dense, coil.LengthM)];
        double below = coil.LengthM * coil.SubmergedShare(_in.LevelM);
        (CoilZone, double)[] zones = [(CoilZone.Submerged, below), (CoilZone.Condensing, coil.LengthM - below)];
        if (coil.InletEnd == CoilInletEnd.Top) Array.Reverse(zones);
        return zones.Where(z => z.Item2 > 0);
    }

    private double Height(double position)
    {
        double rise = position / _in.Coil.LengthM * _in.Coil.HeightM;
        return _in.Coil.InletEnd == CoilInletEnd.Bottom ? _in.Coil.BottomM + rise : _in.Coil.TopM - rise;
    }

    private double Pressure(double p, double loss)
    {
        if (!_in.Options.PressureDrop) return p;
        if (p - loss > LeastPressureShare * _in.Mixture.PressurePa) return p - loss;
        throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 0, loss,
            $"the mixture loses more than {100 * (1 - LeastPressureShare):0} % of its {SpokenAmount.Pressure(_in.Mixture.PressurePa, "0.###")} in the coil: {_massFlow * 1e3:0.###} g/s is too much for a bore of {_in.Coil.BoreM * 1e3:0.##} mm; take a wider tube, or two in parallel"));
    }

    private LocalAnswer Local(in StreamPoint point, double heatPerLength) =>
        LocalTransfer.At(point, _channel, _massFlow, heatPerLength < 0, heatPerLength / _channel.HeatedPerimeterM, _table.PseudoCriticalPressurePa);

    // The surface x between mixture and content: x - q(x) R - [content - mean difference(q(x))] = 0 rises with x and changes sign between the two
    // temperatures. Secant steps, held in the bracket.
    private Answer Solve(in Question c)
    {
        double low = Math.Min(c.InletK, c.ContentK), high = Math.Max(c.InletK, c.ContentK);
        double x = c.InletK + _share * (c.ContentK - c.InletK), tolerance = 1e-11 * Math.Max(1, high - low);
        double lastX = double.NaN, lastG = double.NaN, slope = _slope;
        Answer found = default;
        for (int i = 0; i < 100; i++)
        {
            found = At(c, x, out double g);
            if (Math.Abs(g) <= tolerance || high - low <= 1e-14 * high) break;
            if (g > 0) high = x; else low = x;
            if (!double.IsNaN(lastX) && x != lastX && (g - lastG) / (x - lastX) is > 0 and var secant) slope = secant;
            (lastX, lastG) = (x, g);
            double next = x - g / slope;
            // every fourth step a bisection, should the secant creep along one side
            x = next > low && next < high && i % 4 != 3 ? next : 0.5 * (low + high);
        }
        if (c.ContentK != c.InletK) _share = Math.Clamp((x - c.InletK) / (c.ContentK - c.InletK), 0.001, 0.999);
        _slope = slope;
        return Within(c, found);
    }

    // a cell of so many transfer units that rounding decides: the mixture leaves it at the content's temperature
    private Answer Within(Question c, in Answer found)
    {
        double TooFar(double h) => (_table.Temperature(h, c.PressurePa, out _) - c.ContentK) * (c.ContentK > c.InletK ? 1 : -1);
        double end = c.Enthalpy + c.Step * found.HeatPerLength, over = TooFar(end), under = TooFar(c.Enthalpy);
        if (over <= 0) return found;
        double at = under >= 0 ? c.Enthalpy : Brent.Solve(TooFar, c.Enthalpy, under, end, over, 1e-14 * Math.Abs(end));
        return found with { HeatPerLength = (at - c.Enthalpy) / c.Step };
    }

    private Answer At(in Question c, double x, out double g)
    {
        double film = _outside.Film(c.Zone, c.HeightM, x, c.ContentK), outer = c.Wall.Outer(film), heat = outer * (c.ContentK - x), rise = c.Step * heat;
        var point = _table.At(c.Enthalpy + 0.5 * rise, c.PressurePa);
        var local = Local(point, heat);
        double inside = _in.Options.Inside.FixedFilm ?? local.Film * _in.Options.Inside.FilmScale, inner = c.Wall.Inner(inside);
        double mixtureK = c.ContentK - MeanDifference(c.ContentK - c.InletK, c.ContentK - _table.Temperature(c.Enthalpy + rise, c.PressurePa, out _));
        g = x - heat * inner - mixtureK;
        return new Answer(heat, x, mixtureK, film, inside, 1 / (1 / outer + inner), local, point);
    }

    // logarithmic mean of two differences of one sign; 0 once the second would change its sign
    private static double MeanDifference(double a, double b)
    {
        if (a == 0 || b / a <= 0) return 0;
        double ratio = b / a, off = ratio - 1;
        // the series where the logarithm would lose its digits
        return Math.Abs(off) < 1e-3 ? a * (1 + off / 2 - off * off / 12 + off * off * off / 24) : a * off / Math.Log(ratio);
    }
}
