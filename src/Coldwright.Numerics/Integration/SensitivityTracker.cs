namespace Coldwright.Numerics.Integration;

/// <summary>
/// Forward sensitivities, M ds/dt = df/dy s + df/dp, staggered behind the state (Caracotsios and Stewart, Comput. Chem. Eng. 9 (1985)
/// 359): after an accepted step they are solved with the decompositions of that step. With d = df/dy s + df/dp and the kept Jacobian
/// J, d - J s changes slowly even where the problem is stiff, so it is interpolated in time through the last steps and the end of
/// this one, and J s is solved implicitly. One evaluation a step and parameter. The first step after a start, and every step when asked
/// for, iterates d at the stages themselves.
/// </summary>
internal sealed class SensitivityTracker
{
    private const int MaximumIterations = 8, Nodes = 4;
    private const double Accuracy = 0.1;
    private readonly double _accuracy;

    private readonly ProblemEvaluator _evaluator;
    private readonly ErrorNorm _norm;
    private readonly RadauStepper _stepper;
    private readonly double[] _scales;
    private readonly bool _collocated, _plainStart;
    private readonly double[][] _value, _next, _stages;
    // At each node of the interpolation, the last one the end of the step being made: time, s and d of every parameter.
    private readonly double[] _nodeTime = new double[Nodes];
    private readonly double[][][] _nodeValue, _nodeSlope;
    private readonly double[] _right, _product, _difference, _point, _stageSlope;
    private readonly int _n;
    private int _known;

    public SensitivityTracker(ProblemEvaluator evaluator, ErrorNorm norm, RadauStepper stepper, SensitivityOptions options)
    {
        (_evaluator, _norm, _stepper, _collocated, _plainStart) = (evaluator, norm, stepper, options.Collocated, options.PlainStart && !options.Collocated);
        _n = evaluator.Problem.Count;
        _accuracy = Accuracy * options.Looseness;
        _scales = options.ScaleVector(evaluator.Parameters);
        int count = _scales.Length;
        if (count == 0) throw new ArgumentException("sensitivities are asked for, but the problem has no parameters");
        if (options.Initial.Length != 0 && options.Initial.Length != count * _n)
            throw new ArgumentException($"{options.Initial.Length} initial sensitivities for {count} parameters and {_n} components; {count * _n} expected");
        _value = Jagged(count, _n);
        _next = Jagged(count, _n);
        _stages = Jagged(count, 3 * _n);
        for (int k = 0; k < count && options.Initial.Length > 0; k++) options.Initial.Span.Slice(k * _n, _n).CopyTo(_value[k]);
        _nodeValue = [.. Enumerable.Range(0, Nodes).Select(_ => Jagged(count, _n))];
        _nodeSlope = [.. Enumerable.Range(0, Nodes).Select(_ => Jagged(count, _n))];
        (_right, _stageSlope) = (new double[3 * _n], new double[3 * _n]);
        (_product, _difference, _point) = (new double[_n], new double[_n], new double[_n]);
    }

    public int Count => _value.Length;

    /// <summary>Largest error estimate of the step just tried, against the tolerance.</summary>
    public double Error { get; private set; }

    public double[] Value(int parameter) => _value[parameter];

    public double[] Stages(int parameter) => _stages[parameter];

    public double Scale(int parameter) => _scales[parameter];

    public void Restart() => _known = 0;

    /// <summary>Sensitivities over the step the stepper has just solved; false when they do not converge or cannot be evaluated.</summary>
    public bool TryAdvance(double time, double step, ReadOnlySpan<double> start, ReadOnlySpan<double> startSlope, ReadOnlySpan<double> end, ReadOnlySpan<double> endSlope)
    {
        Error = 0;
        bool collocated = Collocates;
        if (_known == 0)
        {
            for (int k = 0; k < Count; k++)
            {
                if (!_evaluator.TryDirectional(time, start, startSlope, _value[k], k, _scales[k], _nodeSlope[Nodes - 2][k])) return false;
                _value[k].CopyTo(_nodeValue[Nodes - 2][k], 0);
            }
            _nodeTime[Nodes - 2] = time;
        }
        if (collocated && !TryStageSlopes(time, step, start)) return false;
        for (int k = 0; k < Count; k++)
        {
            bool done = collocated ? TryCollocate(k, time, step, start) : TryInterpolate(k, time, step, end, endSlope);
            if (!done) return false;
            for (int i = 0; i < _n; i++) _next[k][i] = _value[k][i] + _stages[k][2 * _n + i];
            if (!collocated)
            {
                // The polynomial without its oldest node: the difference bounds the error of the interpolation.
                SolveInterpolated(k, time, step, oldest: Oldest + 1, nodes: Nodes, _right);
                for (int i = 0; i < _n; i++) _difference[i] = _right[2 * _n + i] - _stages[k][2 * _n + i];
                Error = Math.Max(Error, _norm.OfSensitivity(_difference, _next[k], _scales[k], controlledOnly: true));
            }
            _stepper.EstimateError(_nodeSlope[Nodes - 2][k], _stages[k], step, _product);
            Error = Math.Max(Error, _norm.OfSensitivity(_product, _next[k], _scales[k], controlledOnly: true));
        }
        return true;
    }

    /// <summary>Makes the step just tried the present.</summary>
    public void Accept(double time, double step, ReadOnlySpan<double> start)
    {
        bool collocated = Collocates;
        if (collocated)
        {
            // The stages are the nodes of the next step.
            for (int s = 0; s < 3; s++) _nodeTime[s] = time + RadauCollocation.Node[s + 1] * step;
            for (int k = 0; k < Count; k++)
            {
                // d at the end of the step stands in the last node, those of the inner stages in the first two.
                for (int s = 0; s < 3; s++) for (int i = 0; i < _n; i++) _nodeValue[s][k][i] = _value[k][i] + _stages[k][s * _n + i];
                _nodeSlope[3][k].CopyTo(_nodeSlope[2][k], 0);
            }
        }
        else
        {
            (_nodeValue[0], _nodeValue[1], _nodeValue[2], _nodeValue[3]) = (_nodeValue[1], _nodeValue[2], _nodeValue[3], _nodeValue[0]);
            (_nodeSlope[0], _nodeSlope[1], _nodeSlope[2], _nodeSlope[3]) = (_nodeSlope[1], _nodeSlope[2], _nodeSlope[3], _nodeSlope[0]);
            for (int s = 0; s < 2; s++) _nodeTime[s] = _nodeTime[s + 1];
            _nodeTime[2] = time + step;
        }
        _known = collocated ? Nodes - 1 : Math.Min(Nodes - 1, Math.Max(_known, 1) + 1);
        for (int k = 0; k < Count; k++) _next[k].CopyTo(_value[k], 0);
    }

    private bool Collocates => _collocated || (_known < Nodes - 1 && !_plainStart);

    // first node that is known; the start of the step always is
    private int Oldest => Nodes - 1 - Math.Max(_known, 1);

    private bool TryStageSlopes(double time, double step, ReadOnlySpan<double> start)
    {
        for (int s = 0; s < 3; s++)
        {
            for (int i = 0; i < _n; i++) _point[i] = start[i] + _stepper.Stages[s * _n + i];
            if (!_evaluator.TryEvaluateForSensitivity(time + RadauCollocation.Node[s + 1] * step, _point, _stageSlope.AsSpan(s * _n, _n))) return false;
        }
        return true;
    }

    // Simplified Newton on the stage equations of one parameter; they are linear.
    private bool TryCollocate(int k, double time, double step, ReadOnlySpan<double> start)
    {
        var stages = _stages[k];
        var first = _nodeSlope[Nodes - 2][k];
        for (int s = 0; s < 3; s++) first.CopyTo(_right.AsSpan(s * _n, _n));
        _stepper.SolveStages(_right);
        _right.CopyTo(stages, 0);
        double before = 0;
        for (int iteration = 1; iteration <= MaximumIterations; iteration++)
        {
            for (int s = 0; s < 3; s++)
            {
                for (int i = 0; i < _n; i++)
                {
                    _point[i] = start[i] + _stepper.Stages[s * _n + i];
                    _product[i] = _value[k][i] + stages[s * _n + i];
                }
                var d = _right.AsSpan(s * _n, _n);
                if (!_evaluator.TryDirectional(time + RadauCollocation.Node[s + 1] * step, _point, _stageSlope.AsSpan(s * _n, _n), _product, k, _scales[k], d)) return false;
                // The inner stages use the places of nodes that are free in this kind of step.
                d.CopyTo(_nodeSlope[s == 2 ? 3 : s][k]);
            }
            _stepper.SubtractStageSlopes(stages, step, _right);
            _stepper.SolveStages(_right);
            for (int i = 0; i < stages.Length; i++) stages[i] += _right[i];
            for (int i = 0; i < _n; i++) _product[i] = _value[k][i] + stages[2 * _n + i];
            double size = _norm.OfSensitivity(_right, _product, _scales[k], controlledOnly: false);
            if (!double.IsFinite(size)) return false;
            // The first guess is crude: the second iteration tells the rate.
            double rate = iteration == 1 ? 1 : size / Math.Max(before, 1e-300);
            if (size * Math.Min(rate, 1) <= _accuracy)
            {
                // d belongs to the stages before the last correction; J carries it over.
                for (int node = 0; node < 3; node++) CarryOver(_nodeSlope[node == 2 ? 3 : node][k], _right.AsSpan(node * _n, _n));
                return true;
            }
            if (iteration > 2 && rate > 1) return false;
            before = size;
        }
        return false;
    }

    private bool TryInterpolate(int k, double time, double step, ReadOnlySpan<double> end, ReadOnlySpan<double> endSlope)
    {
        var stages = _stages[k];
        double[] lastValue = _nodeValue[Nodes - 1][k], lastSlope = _nodeSlope[Nodes - 1][k];
        _nodeTime[Nodes - 1] = time + step;
        SolveInterpolated(k, time, step, oldest: Oldest, nodes: Nodes - 1, stages);
        double before = 0;
        for (int iteration = 1; iteration <= MaximumIterations; iteration++)
        {
            for (int i = 0; i < _n; i++) lastValue[i] = _value[k][i] + stages[2 * _n + i];
            if (!_evaluator.TryDirectional(time + step, end, endSlope, lastValue, k, _scales[k], lastSlope)) return false;
            SolveInterpolated(k, time, step, oldest: Oldest, nodes: Nodes, _right);
            // The change of the end value is all that the next iteration would see.
            for (int i = 0; i < _n; i++) _difference[i] = _right[2 * _n + i] - stages[2 * _n + i];
            _right.CopyTo(stages, 0);
            double size = _norm.OfSensitivity(_difference, lastValue, _scales[k], controlledOnly: false);
            if (!double.IsFinite(size)) return false;
            double rate = iteration == 1 ? Math.Max(_stepper.MeasuredRate, 1e-3) : size / Math.Max(before, 1e-300);
            if (size * Math.Min(rate, 1) <= _accuracy)
            {
                CarryOver(lastSlope, _difference);
                for (int i = 0; i < _n; i++) lastValue[i] += _difference[i];
                return true;
            }
            if (iteration > 2 && rate > 1) return false;
            before = size;
        }
        return false;
    }

    private void CarryOver(double[] slope, ReadOnlySpan<double> change)
    {
        _stepper.Jacobian.Multiply(change, _product);
        for (int i = 0; i < _n; i++) slope[i] += _product[i];
    }

    // Stages for d - J s given by the polynomial through the nodes: right-hand side d~ + J (s at the start - s~) at each stage.
    private void SolveInterpolated(int k, double time, double step, int oldest, int nodes, double[] result)
    {
        Span<double> weight = stackalloc double[Nodes];
        for (int s = 0; s < 3; s++)
        {
            double at = time + RadauCollocation.Node[s + 1] * step;
            for (int m = oldest; m < nodes; m++)
            {
                weight[m] = 1;
                for (int j = oldest; j < nodes; j++) if (j != m) weight[m] *= (at - _nodeTime[j]) / (_nodeTime[m] - _nodeTime[j]);
            }
            var right = result.AsSpan(s * _n, _n);
            for (int i = 0; i < _n; i++)
            {
                double value = 0, slope = 0;
                for (int m = oldest; m < nodes; m++)
                {
                    value += weight[m] * _nodeValue[m][k][i];
                    slope += weight[m] * _nodeSlope[m][k][i];
                }
                _point[i] = _value[k][i] - value;
                right[i] = slope;
            }
            _stepper.Jacobian.Multiply(_point, _product);
            for (int i = 0; i < _n; i++) right[i] += _product[i];
        }
        _stepper.SolveStages(result);
    }

    private static double[][] Jagged(int outer, int inner)
    {
        var result = new double[outer][];
        for (int i = 0; i < outer; i++) result[i] = new double[inner];
        return result;
    }
}
