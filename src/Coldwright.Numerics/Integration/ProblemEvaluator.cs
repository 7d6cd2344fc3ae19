namespace Coldwright.Numerics.Integration;

/// <summary>Calls the right-hand side, counts, refuses what is not finite, and makes Jacobians.</summary>
internal sealed class ProblemEvaluator
{
    private const double SmallestEffect = 3e-3;
    private readonly InitialValueProblem _problem;
    private readonly double[] _parameters, _perturbed, _shifted, _shiftedParameters, _increments;
    private readonly double _difference;
    private readonly double[] _floors;

    public ProblemEvaluator(InitialValueProblem problem, IntegrationOptions options, double[] floors)
    {
        _problem = problem;
        _floors = floors;
        _parameters = problem.NominalParameters;
        _shiftedParameters = [.. _parameters];
        (_perturbed, _shifted, _increments) = (new double[problem.Count], new double[problem.Count], new double[problem.Count]);
        _difference = Math.Sqrt(options.RelativeNoise);
    }

    public RunningStatistics Statistics { get; } = new();

    public InitialValueProblem Problem => _problem;

    public ReadOnlySpan<double> Parameters => _parameters;

    /// <summary>Component that was not finite at the last refusal; negative when the right-hand side itself refused.</summary>
    public int BadComponent { get; private set; } = -1;

    public bool TryEvaluate(double time, ReadOnlySpan<double> state, Span<double> slope)
    {
        Statistics.Evaluations++;
        return TryCall(time, state, _parameters, slope);
    }

    public bool TryEvaluateForSensitivity(double time, ReadOnlySpan<double> state, Span<double> slope)
    {
        Statistics.SensitivityEvaluations++;
        return TryCall(time, state, _parameters, slope);
    }

    /// <summary>df/dy, given or by differences; <paramref name="slope"/> is f at this state.</summary>
    public bool TryJacobian(double time, ReadOnlySpan<double> state, ReadOnlySpan<double> slope, JacobianMatrix jacobian)
    {
        Statistics.Jacobians++;
        jacobian.Clear();
        if (_problem.Jacobian is not null)
        {
            _problem.Jacobian(time, state, _parameters, jacobian);
            return Array.TrueForAll(jacobian.Values, double.IsFinite);
        }
        foreach (var group in _problem.Pattern.Groups)
        {
            // At the edge of the equations' range the other side may still be inside.
            if (!TryPerturbed(time, state, group, 1) && !TryPerturbed(time, state, group, -1)) return false;
            foreach (int j in group)
            {
                double inverse = 1 / _increments[j];
                foreach (int i in _problem.Pattern.Rows(j)) jacobian.Values[jacobian.Layout.Row(i) + j] = (_shifted[i] - slope[i]) * inverse;
            }
        }
        return true;
    }

    /// <summary>
    /// df/dy s + df/dp of one parameter, by one difference along both; <paramref name="slope"/> is f at this state.
    /// </summary>
    public bool TryDirectional(double time, ReadOnlySpan<double> state, ReadOnlySpan<double> slope, ReadOnlySpan<double> sensitivity, int parameter, double scale, Span<double> result)
    {
        // The largest relative change of a component by a change of the parameter by its scale. Where that is small, a larger increment
        // keeps the rounding of the state out of the difference.
        double largest = SmallestEffect;
        for (int i = 0; i < state.Length; i++)
            largest = Math.Max(largest, Math.Abs(sensitivity[i]) * scale / (Math.Abs(state[i]) + _floors[i]));
        double increment = _difference * scale / largest;
        if (TryDirection(time, state, slope, sensitivity, parameter, increment, result)) return true;
        return TryDirection(time, state, slope, sensitivity, parameter, -increment, result);
    }

    /// <summary>Increment of a parameter, for differences of event functions.</summary>
    public double Increment(double scale) => _difference * scale;

    private bool TryDirection(double time, ReadOnlySpan<double> state, ReadOnlySpan<double> slope, ReadOnlySpan<double> sensitivity, int parameter, double increment, Span<double> result)
    {
        double shifted = _parameters[parameter] + increment;
        increment = shifted - _parameters[parameter];
        _shiftedParameters[parameter] = shifted;
        for (int i = 0; i < state.Length; i++) _perturbed[i] = state[i] + increment * sensitivity[i];
        Statistics.SensitivityEvaluations++;
        bool done = TryCall(time, _perturbed, _shiftedParameters, result);
        _shiftedParameters[parameter] = _parameters[parameter];
        if (!done) return false;
        double inverse = 1 / increment;
        for (int i = 0; i < state.Length; i++) result[i] = (result[i] - slope[i]) * inverse;
        return true;
    }

    private bool TryPerturbed(double time, ReadOnlySpan<double> state, int[] group, int sign)
    {
        state.CopyTo(_perturbed);
        foreach (int j in group)
        {
            _perturbed[j] = state[j] + sign * _difference * Math.Max(Math.Abs(state[j]), _floors[j]);
            // What was really added, after rounding.
            _increments[j] = _perturbed[j] - state[j];
        }
        Statistics.JacobianEvaluations++;
        return TryCall(time, _perturbed, _parameters, _shifted);
    }

    private bool TryCall(double time, ReadOnlySpan<double> state, double[] parameters, Span<double> slope)
    {
        BadComponent = -1;
        if (!_problem.Slope(time, state, parameters, slope)) return false;
        for (int i = 0; i < slope.Length; i++)
        {
            if (double.IsFinite(slope[i])) continue;
            BadComponent = i;
            return false;
        }
        return true;
    }
}
