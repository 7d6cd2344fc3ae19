using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Description;
using Coldwright.Numerics;
using Coldwright.Numerics.LinearAlgebra;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// Slopes of the headline figures by every input, by implicit differentiation: the balances F(x, p) = 0 of a closed loop give
/// dx/dp = -(dF/dx)^-1 dF/dp, the figures y(x, p) then dy/dp. dF/dx is differenced once, each input costs one pass round the loop, and nothing
/// is solved again. The no-load temperature follows from the net cooling at its own point: dT/dp = -(dQ/dp)/(dQ/dT).
/// </summary>
internal sealed class Sensitivities
{
    private const double PressureStep = 2e-4, EnthalpyStep = 5e-3, FractionStep = 5e-3, LoadStepK = 0.05, InputShare = 0.1;

    private static readonly (string Id, string Name, string Unit)[] Figures =
    [
        ("net_cooling_W", "Cooling left at the load", "W"), ("collected_L_h", "Liquid collected", "L/h"), ("power_W", "Electrical power", "W"), ("energy_kWh_L", "Energy per litre", "kWh/L"),
        ("high_pressure_Pa", "High pressure", "Pa"), ("low_pressure_Pa", "Low pressure", "Pa"), ("mass_flow_kg_s", "Mass flow", "kg/s"), ("discharge_temperature_K", "Discharge temperature", "K"),
    ];

    private readonly ClosedSolver _solver;
    private readonly HelmholtzModel _model;
    private readonly LoopTarget _target;
    private readonly LoopAccuracy _accuracy;
    private readonly CancellationToken _cancel;

    public Sensitivities(ClosedSolver solver, HelmholtzModel model, LoopTarget target, LoopAccuracy accuracy, CancellationToken cancel) =>
        (_solver, _model, _target, _accuracy, _cancel) = (solver, model, target, accuracy, cancel);

    public SensitivityResult Find()
    {
        var inputs = LoopInputs.Of(_solver.Hardware, _model, _solver.Operating.Pass);
        // at the no-load temperature only the temperature itself is asked for, by parts of its own on another thread; where the cooler stands there anyway the point is the same
        bool apart = _solver.NoLoad is not null && !ReferenceEquals(_solver.NoLoad, _solver.Operating);
        var beside = apart ? Task.Run(() => NoLoadSlopes(new Point(this, _solver.NoLoad!, new LoopEvaluator(_solver.Hardware, _model, _accuracy, _cancel)), inputs), _cancel) : null;
        double[][] slopes;
        Point operating;
        try
        {
            operating = new Point(this, _solver.Operating, _solver.Closer.Evaluator);
            slopes = [.. inputs.Select(operating.By)];
        }
        finally
        {
            if (beside is not null) ((IAsyncResult)beside).AsyncWaitHandle.WaitOne();
        }
        double[]? noLoad = beside?.GetAwaiter().GetResult();
        if (noLoad is null && _solver.NoLoad is not null)
        {
            double byLoad = operating.NetByLoad();
            noLoad = [.. slopes.Select(s => -s[0] / byLoad)];
        }
        var rows = inputs.Select((input, i) => new InputSensitivity(input.Id, input.Name, input.Unit, input.Value, input.Step, input.IsDoubt, [noLoad?[i] ?? double.NaN, .. slopes[i]])).ToList();
        double[] values = [_solver.NoLoad?.Pass.LoadK ?? double.NaN, .. operating.Values];
        var all = new (string Id, string Name, string Unit)[] { ("no_load_temperature_K", "No-load temperature", "K") }.Concat(Figures).ToArray();
        var figures = all.Select((f, i) => new HeadlineFigure(f.Id, f.Name, f.Unit, values[i], Math.Sqrt(rows.Where(r => r.IsDoubt && double.IsFinite(r.Slopes[i])).Sum(r => Square(r.Slopes[i] * r.Step))))).ToArray();
        // figures that the cooler does not have (no product, no no-load temperature) are left out
        int[] kept = [.. Enumerable.Range(0, figures.Length).Where(i => double.IsFinite(figures[i].Value))];
        return new SensitivityResult { Figures = [.. kept.Select(i => figures[i])], Inputs = [.. rows.Select(r => r with { Slopes = [.. kept.Select(i => r.Slopes[i])] })] };
    }

    // K per unit of each input
    private static double[] NoLoadSlopes(Point point, IReadOnlyList<LoopInput> inputs)
    {
        double byLoad = point.NetByLoad();
        return [.. inputs.Select(input => -point.By(input)[0] / byLoad)];
    }

    private static double Square(double v) => v * v;

    /// <summary>One closed point with its Jacobian.</summary>
    private sealed class Point
    {
        private readonly Sensitivities _owner;
        private readonly LoopEvaluator _evaluator;
        private readonly LoopPass _at, _exact;
        private readonly ThrottleEstimate _throttle;
        private readonly double[] _jacobian, _figuresByState;
        private readonly int _n;

        public Point(Sensitivities owner, LoopCloser.Closed closed, LoopEvaluator evaluator)
        {
            (_owner, _evaluator) = (owner, evaluator);
            var (inlet, back) = LoopEvaluator.ThrottleQuestion(closed.Pass);
            // slopes found here, not those learnt on the way
            _throttle = new ThrottleEstimate(evaluator.ThrottleFlow);
            _throttle.Ask(inlet, back);
            // this evaluator's own compressor on the same properties
            var near = closed.Pass.Tables;
            var tables = evaluator.Tables.Along(near, near.Z) ?? evaluator.Tables.Make(near.Z, near.Frame);
            _n = closed.Pass.State.Count;
            _at = Run(_evaluator, closed.Pass.State, closed.Pass.LoadK, tables, closed.Pass, _throttle);
            _exact = Run(_evaluator, closed.Pass.State, closed.Pass.LoadK, tables, _at, null);
            Values = owner.FiguresOf(_evaluator.Hardware, _at);
            (_jacobian, _figuresByState) = (new double[_n * _n], new double[Figures.Length * _n]);
            for (int c = 0; c < _n; c++) Column(c);
        }

        public double[] Values { get; }

        private LoopPass Run(LoopEvaluator evaluator, LoopState s, double loadK, LoopTables t, LoopPass near, ThrottleEstimate? throttle) => evaluator.Run(s, loadK, t, near.Recuperator, _owner._target, throttle, LoopCare.Near);

        private void Column(int c)
        {
            bool fraction = c >= LoopState.FirstFraction;
            double h = c is LoopState.High or LoopState.LnSuction or LoopState.LnCoil ? PressureStep : fraction ? FractionStep : EnthalpyStep;
            var (up, down) = (Shifted(c, h, fraction), Shifted(c, -h, fraction));
            double[] yu = _owner.FiguresOf(_evaluator.Hardware, up), yd = _owner.FiguresOf(_evaluator.Hardware, down);
            for (int r = 0; r < _n; r++) _jacobian[r * _n + c] = (up.Residuals[r] - down.Residuals[r]) / (2 * h);
            for (int f = 0; f < Figures.Length; f++) _figuresByState[f * _n + c] = (yu[f] - yd[f]) / (2 * h);
        }

        private LoopPass Shifted(int c, double h, bool fraction)
        {
            var dx = new double[_n];
            dx[c] = h;
            var state = _at.State.Moved(dx, 1);
            var tables = fraction ? _evaluator.Tables.Along(_at.Tables, state.Z()) ?? _evaluator.Tables.Make(state.Z(), _at.Tables.Frame) : _at.Tables;
            return Run(_evaluator, state, _at.LoadK, tables, _at, fraction ? null : _throttle);
        }

        // figures' slopes by an input that changes the residuals by dF and the figures themselves by dY
        private double[] Answer(double[] df, double[] dy)
        {
            double[] dx = [.. df], spoilt = [.. _jacobian];
            if (!Dense.TrySolve(spoilt, dx, _n)) throw new SolveException(new SolveReport(SolveStatus.NotConverged, 0, double.NaN, "the closed loop's Jacobian is singular: the balances do not fix the answer here, and no sensitivity can be given"));
            var slopes = new double[Figures.Length];
            for (int f = 0; f < slopes.Length; f++)
            {
                slopes[f] = dy[f];
                for (int c = 0; c < _n; c++) slopes[f] -= _figuresByState[f * _n + c] * dx[c];
            }
            return slopes;
        }

        public double[] By(LoopInput input)
        {
            double h = InputShare * input.Step;
            var (up, down) = (Changed(input, h), Changed(input, -h));
            double[] yu = _owner.FiguresOf(up.Hardware, up.Pass), yd = _owner.FiguresOf(down.Hardware, down.Pass), df = new double[_n], dy = new double[Figures.Length];
            for (int r = 0; r < _n; r++) df[r] = (up.Pass.Residuals[r] - down.Pass.Residuals[r]) / (2 * h);
            for (int f = 0; f < dy.Length; f++) dy[f] = (yu[f] - yd[f]) / (2 * h);
            return Answer(df, dy);
        }

        private (Hardware Hardware, LoopPass Pass) Changed(LoopInput input, double h)
        {
            var hardware = input.Changed(_evaluator.Hardware, h);
            // the precooler's model is another one only where the machine is
            bool samePrecooler = hardware.Precooler == _evaluator.Hardware.Precooler && hardware.Knobs.PrecoolerFlow == _evaluator.Hardware.Knobs.PrecoolerFlow && hardware.Knobs.PrecoolerConductance == _evaluator.Hardware.Knobs.PrecoolerConductance;
            var evaluator = new LoopEvaluator(hardware, _owner._model, _owner._accuracy, _owner._cancel, samePrecooler ? _evaluator.Precooler : null, _evaluator.Precooler);
            var tables = ReferenceEquals(hardware.Buffer, _evaluator.Hardware.Buffer) ? _at.Tables : evaluator.Tables.WithBuffer(_at.Tables);
            return (hardware, Run(evaluator, _at.State, _at.LoadK, tables, _at, input.OnThrottle ? null : _throttle));
        }

        public double NetByLoad()
        {
            LoopPass Load(double d) => Run(_evaluator, _at.State, _at.LoadK + d, _at.Tables, _at, _throttle);
            var (up, down) = (Load(LoadStepK), Load(-LoadStepK));
            double[] df = new double[_n], dy = new double[Figures.Length];
            for (int r = 0; r < _n; r++) df[r] = (up.Residuals[r] - down.Residuals[r]) / (2 * LoadStepK);
            dy[0] = (up.NetCoolingW - down.NetCoolingW) / (2 * LoadStepK);
            return Answer(df, dy)[0];
        }
    }

    private double[] FiguresOf(Hardware h, LoopPass p)
    {
        double power = p.Compressor.ElectricalPowerW * h.Knobs.CompressorFlow * h.Knobs.CompressorPower + h.Layout.Aftercooler.FanPowerW + (h.Layout.Precooler?.FanPowerW ?? 0);
        double litres = double.NaN, perLitre = double.NaN, feedPrecoolW = 0;
        if (_solver.Product is { } product)
        {
            // its flash serves both points
            lock (product)
            {
                double heat = ProductMade.HeatPerMole(h, product, p.LoadK, p.RecuperatorInletK), feed = p.NetCoolingW / heat, made = Math.Max(0, feed);
                power += made * product.FeedWork();
                if (h.Layout.FeedPrecooled) feedPrecoolW = made * (product.Compressed.MolarEnthalpy - product.Arriving(p.RecuperatorInletK).MolarEnthalpy);
                litres = feed * (1 - product.LetDown(product.Leaving(p.LoadK).Enthalpy).VapourFraction) / product.BoilingLiquid.MolarDensity * 3.6e6;
            }
        }
        power += p.Precooler is { } loop ? loop.CompressorPowerW * (1 + (p.PrecoolingW > 0 ? feedPrecoolW / p.PrecoolingW : 0))
            : h.Layout.Precooler is { } pc ? ModelRatingSolver.PrecoolerPowerW(pc, h.RoomK, p.PrecoolingW + feedPrecoolW) : 0;
        // where nothing is left there is no litre; the litres' slope still says what would help
        if (litres > 1e-6) perLitre = power / 1000 / litres;
        return [p.NetCoolingW, litres, power, perLitre, p.AftercooledPa, p.State.SuctionPa, p.Flow * p.MolarMass, p.Compressor.Discharge.TemperatureK];
    }
}
