using Coldwright.Numerics.Integration.LinearAlgebra;

namespace Coldwright.Numerics.Integration;

internal enum StepOutcome
{
    Converged,
    Diverged,
    Refused,
}

/// <summary>
/// One step of the Radau IIA method: stage equations by simplified Newton iterations with a kept Jacobian, decoupled into one real and
/// one complex system of the problem's own size (Hairer and Wanner, Solving Ordinary Differential Equations II, section IV.8).
/// Holds the decompositions until step or Jacobian change.
/// </summary>
internal sealed class RadauStepper
{

    private readonly ProblemEvaluator _evaluator;
    private readonly ErrorNorm _norm;
    private readonly RealDecomposition _real;
    private readonly ComplexDecomposition _complex;
    private readonly double[] _stages, _residual, _point, _previous;
    private readonly double[] _mass;
    private readonly double _accuracy;
    private readonly int _n, _limit;
    private bool _hasPrevious;
    private double _previousLength, _carriedRate = 1;

    public RadauStepper(ProblemEvaluator evaluator, ErrorNorm norm, bool tight)
    {
        (_evaluator, _norm) = (evaluator, norm);
        var problem = evaluator.Problem;
        _n = problem.Count;
        _mass = problem.Mass;
        Jacobian = new(_n, problem.Pattern.Lower, problem.Pattern.Upper);
        _real = new(Jacobian.Layout);
        _complex = new(Jacobian.Layout);
        (_stages, _residual, _previous) = (new double[3 * _n], new double[3 * _n], new double[3 * _n]);
        _point = new double[_n];
        // Rounding of the state limits what an iteration can reach.
        double rounding = 50 * 2.2e-16 / norm.Relative;
        _accuracy = Math.Max(rounding, tight ? 1e-6 : Math.Min(0.03, Math.Sqrt(norm.Relative)));
        _limit = tight ? 3 * IterationLimit : IterationLimit;
    }

    /// <summary>The kept df/dy.</summary>
    public JacobianMatrix Jacobian { get; }

    /// <summary>Increments of the three stages over the start of the step, one after another.</summary>
    public ReadOnlySpan<double> Stages => _stages;

    /// <summary>Step the decompositions belong to; 0 when they belong to none.</summary>
    public double DecomposedFor { get; private set; }

    /// <summary>Convergence rate of the last iteration, as far as one was measured: small when the first guess was good enough.</summary>
    public double Rate { get; private set; }

    /// <summary>The convergence rate last measured with this Jacobian; 1 when none was.</summary>
    public double MeasuredRate { get; private set; } = 1;

    /// <summary>Iterations of the last step.</summary>
    public int Iterations { get; private set; }

    /// <summary>Iterations after which a step is given up.</summary>
    public const int IterationLimit = 8;

    public bool TryRefreshJacobian(double time, ReadOnlySpan<double> state, ReadOnlySpan<double> slope)
    {
        (DecomposedFor, MeasuredRate) = (0, 1);
        return _evaluator.TryJacobian(time, state, slope, Jacobian);
    }

    public bool TryDecompose(double step)
    {
        _evaluator.Statistics.Decompositions++;
        DecomposedFor = 0;
        var complex = RadauCollocation.ComplexEigenvalue / step;
        // The conjugate belongs to the pairing w2 + i w3 of the transformed stages.
        if (!_real.TryDecompose(RadauCollocation.RealEigenvalue / step, _mass, Jacobian)) return false;
        if (!_complex.TryDecompose(complex.Real, -complex.Imaginary, _mass, Jacobian)) return false;
        DecomposedFor = step;
        return true;
    }

    /// <summary>Forgets the step before: after a start or an event the stages begin at zero.</summary>
    public void Restart()
    {
        _hasPrevious = false;
        _carriedRate = 1;
    }

    /// <summary>Keeps the accepted stages: their polynomial, continued, starts the next iteration.</summary>
    public void Accept(double step)
    {
        _stages.CopyTo(_previous, 0);
        _hasPrevious = true;
        _previousLength = step;
    }

    public StepOutcome Solve(double time, double step, ReadOnlySpan<double> state)
    {
        Predict(step);
        _carriedRate = Math.Pow(Math.Max(_carriedRate, 2.2e-16), 0.8);
        double before = 0;
        for (Iterations = 1; Iterations <= _limit; Iterations++)
        {
            for (int s = 0; s < 3; s++)
            {
                var stage = _stages.AsSpan(s * _n, _n);
                for (int i = 0; i < _n; i++) _point[i] = state[i] + stage[i];
                if (!_evaluator.TryEvaluate(time + RadauCollocation.Node[s + 1] * step, _point, _residual.AsSpan(s * _n, _n))) return StepOutcome.Refused;
            }
            SubtractStageSlopes(_stages, step, _residual);
            SolveStages(_residual);
            double size = _norm.OfStages(_residual);
            if (!double.IsFinite(size)) return StepOutcome.Diverged;
            if (Iterations > 1)
            {
                double rate = size / before;
                MeasuredRate = Rate = Iterations == 2 ? rate : Math.Sqrt(rate * Rate);
                if (Rate >= 0.99 && size > _accuracy) return StepOutcome.Diverged;
                _carriedRate = Rate < 0.99 ? Rate / (1 - Rate) : 1;
                double expected = size * Math.Pow(Rate, _limit - Iterations) / (1 - Math.Min(Rate, 0.99));
                if (expected > _accuracy && size > _accuracy) return StepOutcome.Diverged;
            }
            before = Math.Max(size, 1e-300);
            for (int i = 0; i < _stages.Length; i++) _stages[i] += _residual[i];
            if (_carriedRate * size <= _accuracy)
            {
                if (Iterations == 1) Rate = Math.Min(Rate, 1e-3);
                return StepOutcome.Converged;
            }
        }
        return StepOutcome.Diverged;
    }

    /// <summary>Error estimate of third order: the slope at the start against that of the collocation polynomial, filtered by the real system.</summary>
    /// <param name="slope">f at the start of the step.</param>
    /// <param name="stages">Stage increments.</param>
    /// <param name="step">Step.</param>
    /// <param name="error">Result.</param>
    public void EstimateError(ReadOnlySpan<double> slope, ReadOnlySpan<double> stages, double step, Span<double> error)
    {
        var w = RadauCollocation.StartSlope;
        for (int i = 0; i < _n; i++)
            error[i] = slope[i] - Mass(i) / step * (w[0] * stages[i] + w[1] * stages[_n + i] + w[2] * stages[2 * _n + i]);
        _real.Solve(error);
    }

    /// <summary>right -= M (inverse of A) stages / step.</summary>
    public void SubtractStageSlopes(ReadOnlySpan<double> stages, double step, Span<double> right)
    {
        var inverse = RadauCollocation.Inverse;
        for (int i = 0; i < _n; i++)
        {
            double z1 = stages[i], z2 = stages[_n + i], z3 = stages[2 * _n + i], m = Mass(i) / step;
            right[i] -= m * (inverse[0] * z1 + inverse[1] * z2 + inverse[2] * z3);
            right[_n + i] -= m * (inverse[3] * z1 + inverse[4] * z2 + inverse[5] * z3);
            right[2 * _n + i] -= m * (inverse[6] * z1 + inverse[7] * z2 + inverse[8] * z3);
        }
    }

    /// <summary>Replaces three right-hand sides by the solution of ((inverse of A) x M / step - I x J) stages = right.</summary>
    public void SolveStages(Span<double> right)
    {
        Transform(RadauCollocation.TInverse, right);
        _real.Solve(right[.._n]);
        _complex.Solve(right.Slice(_n, _n), right.Slice(2 * _n, _n));
        Transform(RadauCollocation.T, right);
    }

    private double Mass(int i) => _mass.Length == 0 ? 1 : _mass[i];

    private void Transform(double[] t, Span<double> stages)
    {
        for (int i = 0; i < _n; i++)
        {
            double a = stages[i], b = stages[_n + i], c = stages[2 * _n + i];
            stages[i] = t[0] * a + t[1] * b + t[2] * c;
            stages[_n + i] = t[3] * a + t[4] * b + t[5] * c;
            stages[2 * _n + i] = t[6] * a + t[7] * b + t[8] * c;
        }
    }

    private void Predict(double step)
    {
        if (!_hasPrevious)
        {
            Array.Clear(_stages);
            return;
        }
        for (int s = 0; s < 3; s++)
        {
            double theta = 1 + RadauCollocation.Node[s + 1] * step / _previousLength;
            double w1 = RadauCollocation.Lagrange(1, theta), w2 = RadauCollocation.Lagrange(2, theta), w3 = RadauCollocation.Lagrange(3, theta) - 1;
            for (int i = 0; i < _n; i++)
                _stages[s * _n + i] = w1 * _previous[i] + w2 * _previous[_n + i] + w3 * _previous[2 * _n + i];
        }
    }
}
