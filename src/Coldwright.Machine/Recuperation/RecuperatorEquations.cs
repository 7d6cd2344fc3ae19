using Coldwright.Machine.Streams;

namespace Coldwright.Machine.Recuperation;

/// <summary>
/// Balances of the cells (docs/theory/recuperator.md): in each, heat given up by the warm stream, heat taken up by the cold one and the
/// balance of the wall. Streams are taken at the mean of a cell's two enthalpies, which is second order in the cell's length. The
/// conductances and pressures are found from the state by <see cref="Update"/>; during a Newton step the pressures are held and the
/// conductances carried along their slope with the stream's enthalpy.
/// </summary>
internal sealed class RecuperatorEquations
{
    private const double Gravity = 9.80665, LeastPressureShare = 0.3;
    // J/mol: below this the difference of two temperatures is mostly rounding
    private const double LeastRise = 1e-3;
    // J/mol: of the difference that gives a conductance's slope
    private const double LeastStep = 0.5;
    // a slope serves until its stream has moved by this share of the cell's own rise
    private const double SlopeServes = 0.5;

    private readonly RecuperatorCase _case;
    private readonly FlowChannel _hotChannel, _coldChannel;
    private readonly double _dx, _leak, _environment, _hotMass, _coldMass;
    private readonly bool _hotCondenses;
    private readonly double[] _hotT, _hotSlope, _coldT, _coldSlope, _axial;

    public readonly int Cells;
    /// <summary>Conductances of a cell from each stream to the middle of the wall, W/K.</summary>
    public readonly double[] HotG, ColdG;
    // their slopes with the stream's enthalpy, W mol/(K J), the enthalpies they are carried from, and those at which the slopes were found
    private readonly double[] _hotD, _coldD, _hotAt, _coldAt, _hotFoundAt, _coldFoundAt, _hotNow, _coldNow;
    private double _carried = 1;
    public readonly StreamPoint[] HotPoint, ColdPoint;
    public readonly LocalAnswer[] HotLocal, ColdLocal;
    /// <summary>Three balances per cell, W.</summary>
    public readonly double[] Residuals;

    public RecuperatorEquations(RecuperatorCase question, int cells)
    {
        _case = question;
        Cells = cells;
        _dx = question.Geometry.LengthM / cells;
        (_hotChannel, _coldChannel) = (question.Geometry.Hot, question.Geometry.Cold);
        _leak = (question.Leak?.ConductancePerLength ?? 0) * _dx;
        _environment = question.Leak?.EnvironmentK ?? 0;
        (_hotMass, _coldMass) = (question.Hot.MassFlow, question.Cold.MassFlow);
        _hotCondenses = question.HotIsWarmer;
        (_hotT, _hotSlope, _coldT, _coldSlope) = (new double[cells], new double[cells], new double[cells], new double[cells]);
        (_hotD, _coldD, _hotAt, _coldAt, _hotNow, _coldNow) =
            (new double[cells], new double[cells], new double[cells], new double[cells], new double[cells], new double[cells]);
        (_hotFoundAt, _coldFoundAt) = (new double[cells], new double[cells]);
        Array.Fill(_hotFoundAt, double.NaN);
        Array.Fill(_coldFoundAt, double.NaN);
        (HotG, ColdG, _axial, Residuals) = (new double[cells], new double[cells], new double[cells + 1], new double[3 * cells]);
        (HotPoint, ColdPoint, HotLocal, ColdLocal) = (new StreamPoint[cells], new StreamPoint[cells], new LocalAnswer[cells], new LocalAnswer[cells]);
        Scale = Math.Max(question.Hot.MolarFlow, question.Cold.MolarFlow) * 8.3 * Math.Max(1, Math.Abs(question.Hot.TemperatureK - question.Cold.TemperatureK));
    }

    /// <summary>Heat flow in which balances are judged, W: about that of the larger stream as a cold monatomic gas over the whole difference.</summary>
    public double Scale { get; }

    /// <summary>True when a pressure had to be held above the least that means anything.</summary>
    public bool Starved { get; private set; }

    /// <summary>Conductances to begin with.</summary>
    public void Seed(RecuperatorState s)
    {
        for (int i = 0; i < Cells; i++)
        {
            (HotG[i], ColdG[i]) = (s.HotG[i] * _dx, s.ColdG[i] * _dx);
            (_hotD[i], _coldD[i], _hotFoundAt[i], _coldFoundAt[i]) = (s.HotD[i] * _dx, s.ColdD[i] * _dx, s.HotAt[i], s.ColdAt[i]);
        }
    }

    /// <summary>Heat from the warm stream into the wall of cell i, W.</summary>
    public double Given(int i, RecuperatorState s) => _hotNow[i] * (_hotT[i] - s.Wall[i]);

    /// <summary>Leaves the conductances in the state, for a later start.</summary>
    public void Keep(RecuperatorState s)
    {
        for (int i = 0; i < Cells; i++)
        {
            (s.HotG[i], s.ColdG[i]) = (HotG[i] / _dx, ColdG[i] / _dx);
            (s.HotD[i], s.ColdD[i], s.HotAt[i], s.ColdAt[i]) = (_hotD[i] / _dx, _coldD[i] / _dx, _hotFoundAt[i], _coldFoundAt[i]);
        }
    }

    /// <summary>Conductance of the metal between cell i - 1 and i, W/K.</summary>
    public double Axial(int i) => _axial[i];

    public double HotT(int i) => _hotT[i];
    public double ColdT(int i) => _coldT[i];

    /// <summary>Heat from the room into cell i, W.</summary>
    public double LeakInto(int i, RecuperatorState s) => _leak * (_environment - _case.Geometry.LeakReceiver switch
    {
        LeakReceiver.Hot => _hotT[i],
        LeakReceiver.Cold => _coldT[i],
        _ => s.Wall[i],
    });

    /// <summary>New conductances and pressures from the state; <paramref name="share"/>: of the films between nothing and their full value, <paramref name="relaxation"/>: share of the new conductance in a geometric mean with the last.</summary>
    public void Update(RecuperatorState s, double share, double relaxation)
    {
        var o = _case.Options;
        Points(_case.Hot, s.HotH, s.HotP, HotPoint);
        Points(_case.Cold, s.ColdH, s.ColdP, ColdPoint);
        for (int i = 0; i < Cells; i++)
        {
            double k = _case.Wall.Conductivity(Math.Max(s.Wall[i], 1)).Value;
            double intoHot = HotG[i] * (s.Wall[i] - HotPoint[i].TemperatureK) / (_hotChannel.HeatedPerimeterM * _dx);
            double intoCold = ColdG[i] * (s.Wall[i] - ColdPoint[i].TemperatureK) / (_coldChannel.HeatedPerimeterM * _dx);
            (_hotAt[i], _coldAt[i]) = (HotPoint[i].MolarEnthalpy, ColdPoint[i].MolarEnthalpy);
            HotLocal[i] = HotSide(HotPoint[i], intoHot);
            ColdLocal[i] = ColdSide(ColdPoint[i], intoCold);
            double hot = share * _dx * _case.Geometry.HotConductance(HotLocal[i].Film, k), cold = share * _dx * _case.Geometry.ColdConductance(ColdLocal[i].Film, k);
            // slopes by a difference over a tenth of the cell
            double hotRise = Math.Abs(s.HotH[i + 1] - s.HotH[i]), coldRise = Math.Abs(s.ColdH[i + 1] - s.ColdH[i]);
            if (o.Hot.FixedFilm is null && !(Math.Abs(_hotAt[i] - _hotFoundAt[i]) <= SlopeServes * hotRise))
            {
                double step = Math.Max(LeastStep, 0.1 * hotRise);
                _hotD[i] = (_dx * _case.Geometry.HotConductance(HotSide(Shifted(_case.Hot, HotPoint[i], step), intoHot).Film, k) - hot / share) / step;
                _hotFoundAt[i] = _hotAt[i];
            }
            if (o.Cold.FixedFilm is null && !(Math.Abs(_coldAt[i] - _coldFoundAt[i]) <= SlopeServes * coldRise))
            {
                double step = Math.Max(LeastStep, 0.1 * coldRise);
                _coldD[i] = (_dx * _case.Geometry.ColdConductance(ColdSide(Shifted(_case.Cold, ColdPoint[i], step), intoCold).Film, k) - cold / share) / step;
                _coldFoundAt[i] = _coldAt[i];
            }
            HotG[i] = Mean(HotG[i], hot, relaxation);
            ColdG[i] = Mean(ColdG[i], cold, relaxation);
            if (i > 0 && o.AxialConduction)
                _axial[i] = _case.Geometry.MetalAreaM2 / _dx * _case.Wall.Conductivity(Math.Max(0.5 * (s.Wall[i] + s.Wall[i - 1]), 1)).Value;
        }
        (Starved, _carried) = (false, share * relaxation);
        if (!o.PressureDrop) return;
        March(HotLocal, s.HotP, forward: true, o.ColdEndRiseM / Cells);
        March(ColdLocal, s.ColdP, forward: false, -o.ColdEndRiseM / Cells);
    }

    private LocalAnswer HotSide(in StreamPoint p, double heatFlux) =>
        Shifted(LocalTransfer.At(p, _hotChannel, _hotMass, _hotCondenses, heatFlux, _case.Hot.Table.PseudoCriticalPressurePa), _case.Options.Hot, _case.HotFilmSigma, _case.HotFrictionSigma);

    private LocalAnswer ColdSide(in StreamPoint p, double heatFlux) =>
        Shifted(LocalTransfer.At(p, _coldChannel, _coldMass, !_hotCondenses, heatFlux, _case.Cold.Table.PseudoCriticalPressurePa), _case.Options.Cold, _case.ColdFilmSigma, _case.ColdFrictionSigma);

    // a neighbouring state with the slope of the cell
    private static StreamPoint Shifted(StreamInlet stream, in StreamPoint p, double by) =>
        stream.Table.At(p.MolarEnthalpy + by, p.PressurePa) with { TemperatureSlope = p.TemperatureSlope };

    // the conductance carried along its slope, within reason
    private static double Carried(double g, double slope, double by) => Math.Clamp(g + slope * by, 0.5 * g, 2 * g);

    // The slope dT/dh that the mixture correction asks for is that over the whole cell: where a phase appears it jumps, and a cell whose
    // middle lies there would never settle.
    private static void Points(StreamInlet stream, double[] h, double[] p, StreamPoint[] points)
    {
        for (int i = 0; i < points.Length; i++)
        {
            double middleP = 0.5 * (p[i] + p[i + 1]), rise = h[i + 1] - h[i];
            var point = stream.Table.At(0.5 * (h[i] + h[i + 1]), middleP);
            double here = stream.Table.Temperature(h[i], middleP, out _), after = stream.Table.Temperature(h[i + 1], middleP, out _);
            points[i] = Math.Abs(rise) > LeastRise ? point with { TemperatureSlope = Math.Max(0, (after - here) / rise) } : point;
        }
    }

    private static double Mean(double old, double now, double relaxation) =>
        old > 0 && relaxation < 1 ? Math.Pow(old, 1 - relaxation) * Math.Pow(now, relaxation) : now;

    private static LocalAnswer Shifted(LocalAnswer a, SideOptions side, double filmSigma, double frictionSigma) => a with
    {
        Film = (side.FixedFilm ?? a.Film) * side.FilmScale * (filmSigma == 0 ? 1 : Math.Exp(filmSigma * a.FilmUncertainty)),
        FrictionGradient = a.FrictionGradient * side.FrictionScale * (frictionSigma == 0 ? 1 : Math.Exp(frictionSigma * a.FrictionUncertainty)),
    };

    // from the inlet on: friction, static head (rise: of the outlet side of a cell over its inlet side) and the change of momentum
    private void March(LocalAnswer[] local, double[] p, bool forward, double rise)
    {
        int n = Cells;
        int Cell(int step) => forward ? step : n - 1 - step;
        double inlet = p[forward ? 0 : n], lost = 0, floor = LeastPressureShare * inlet;
        double first = local[Cell(0)].MomentumFlux, entering = Math.Max(0.5 * first, 1.5 * first - 0.5 * local[Cell(1)].MomentumFlux);
        for (int step = 0; step < n; step++)
        {
            var here = local[Cell(step)];
            lost += here.FrictionGradient * _dx + here.MeanDensity * Gravity * rise;
            double leaving = step + 1 < n ? 0.5 * (here.MomentumFlux + local[Cell(step + 1)].MomentumFlux)
                : Math.Max(0.5 * here.MomentumFlux, 1.5 * here.MomentumFlux - 0.5 * local[Cell(step - 1)].MomentumFlux);
            double next = inlet - lost - (leaving - entering);
            if (!(next > floor)) (next, Starved) = (floor, true);
            p[forward ? step + 1 : n - step - 1] = next;
        }
    }

    /// <summary>Fills the balances and returns their largest absolute value, W.</summary>
    public double Balance(RecuperatorState s)
    {
        double largest = 0;
        for (int i = 0; i < Cells; i++)
        {
            _hotT[i] = _case.Hot.Table.Temperature(0.5 * (s.HotH[i] + s.HotH[i + 1]), 0.5 * (s.HotP[i] + s.HotP[i + 1]), out _hotSlope[i]);
            _coldT[i] = _case.Cold.Table.Temperature(0.5 * (s.ColdH[i] + s.ColdH[i + 1]), 0.5 * (s.ColdP[i] + s.ColdP[i + 1]), out _coldSlope[i]);
            _hotNow[i] = Carried(HotG[i], _carried * _hotD[i], 0.5 * (s.HotH[i] + s.HotH[i + 1]) - _hotAt[i]);
            _coldNow[i] = Carried(ColdG[i], _carried * _coldD[i], 0.5 * (s.ColdH[i] + s.ColdH[i + 1]) - _coldAt[i]);
        }
        var receiver = _case.Geometry.LeakReceiver;
        for (int i = 0; i < Cells; i++)
        {
            double given = _hotNow[i] * (_hotT[i] - s.Wall[i]), taken = _coldNow[i] * (s.Wall[i] - _coldT[i]), leak = LeakInto(i, s);
            double wall = given - taken;
            if (i > 0) wall += _axial[i] * (s.Wall[i - 1] - s.Wall[i]);
            if (i < Cells - 1) wall += _axial[i + 1] * (s.Wall[i + 1] - s.Wall[i]);
            double hot = _case.Hot.MolarFlow * (s.HotH[i + 1] - s.HotH[i]) + given, cold = _case.Cold.MolarFlow * (s.ColdH[i] - s.ColdH[i + 1]) - taken;
            if (receiver == LeakReceiver.Hot) hot -= leak;
            else if (receiver == LeakReceiver.Cold) cold -= leak;
            else wall += leak;
            (Residuals[3 * i], Residuals[3 * i + 1], Residuals[3 * i + 2]) = (hot, cold, wall);
            largest = Math.Max(largest, Math.Max(Math.Abs(hot), Math.Max(Math.Abs(cold), Math.Abs(wall))));
        }
        return largest;
    }

    /// <summary>Euclidean norm of the balances, W.</summary>
    public double Norm()
    {
        double sum = 0;
        foreach (double r in Residuals) sum += r * r;
        return Math.Sqrt(sum);
    }

    /// <summary>Newton's system after <see cref="Balance"/>: unknowns of cell i are the warm stream's enthalpy leaving it, the cold stream's enthalpy leaving it and the wall temperature.</summary>
    public void Linearise(RecuperatorState s, BlockTridiagonal system)
    {
        system.Clear();
        var receiver = _case.Geometry.LeakReceiver;
        double nh = _case.Hot.MolarFlow, nc = _case.Cold.MolarFlow;
        for (int i = 0; i < Cells; i++)
        {
            var m = system.Middle.AsSpan(9 * i, 9);
            var l = system.Lower.AsSpan(9 * i, 9);
            var u = system.Upper.AsSpan(9 * i, 9);
            double gh = 0.5 * (_hotNow[i] * _hotSlope[i] + Moving(HotG[i], _carried * _hotD[i], _hotNow[i]) * (_hotT[i] - s.Wall[i]));
            double gc = 0.5 * (_coldNow[i] * _coldSlope[i] + Moving(ColdG[i], _carried * _coldD[i], _coldNow[i]) * (_coldT[i] - s.Wall[i]));
            double lh = receiver == LeakReceiver.Hot ? 0.5 * _leak * _hotSlope[i] : 0, lc = receiver == LeakReceiver.Cold ? 0.5 * _leak * _coldSlope[i] : 0;
            m[0] = nh + gh + lh;
            m[2] = -_hotNow[i];
            l[0] = -nh + gh + lh;
            m[4] = nc + gc + lc;
            m[5] = -_coldNow[i];
            u[4] = -nc + gc + lc;
            m[6] = gh;
            l[6] = gh;
            m[7] = gc;
            u[7] = gc;
            m[8] = -_hotNow[i] - _coldNow[i] - (receiver == LeakReceiver.Wall ? _leak : 0);
            if (i > 0)
            {
                m[8] -= _axial[i];
                l[8] = _axial[i];
            }
            if (i < Cells - 1)
            {
                m[8] -= _axial[i + 1];
                u[8] = _axial[i + 1];
            }
            for (int j = 0; j < 3; j++) system.Right[3 * i + j] = -Residuals[3 * i + j];
        }
    }

    // no slope where the conductance is held at its bounds
    private static double Moving(double g, double slope, double now) => now > 0.5 * g && now < 2 * g ? slope : 0;

    /// <summary>state = from + step x solution.</summary>
    public static void Advance(RecuperatorState to, RecuperatorState from, BlockTridiagonal system, double step)
    {
        for (int i = 0; i < to.Cells; i++)
        {
            to.HotH[i + 1] = from.HotH[i + 1] + step * system.Right[3 * i];
            to.ColdH[i] = from.ColdH[i] + step * system.Right[3 * i + 1];
            to.Wall[i] = from.Wall[i] + step * system.Right[3 * i + 2];
        }
    }
}
