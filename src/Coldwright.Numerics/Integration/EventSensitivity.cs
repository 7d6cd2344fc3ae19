namespace Coldwright.Numerics.Integration;

/// <summary>
/// How sensitivities pass an event: the time of the event moves with the parameters, and state and slope may jump there. Derivatives of
/// the event function and of the state change by differences. Needs a mass matrix without zeros.
/// </summary>
internal sealed class EventSensitivity(ProblemEvaluator evaluator, SensitivityTracker tracker)
{
    private readonly double[] _point = new double[evaluator.Problem.Count], _reference = new double[evaluator.Problem.Count];
    private readonly double[] _parameters = [.. evaluator.Parameters];
    private readonly double[] _before = new double[evaluator.Problem.Count], _after = new double[evaluator.Problem.Count];

    /// <summary>Derivative of the time of an event by each parameter. Not found (all 0) where the function only touches zero.</summary>
    /// <param name="happened">The event.</param>
    /// <param name="time">Its time.</param>
    /// <param name="state">State there.</param>
    /// <param name="step">Step it was found in: gives the increment of the difference along the path.</param>
    public double[] TimeDerivatives(IntegrationEvent happened, double time, ReadOnlySpan<double> state, double step)
    {
        var result = new double[tracker.Count];
        if (happened.Value is not { } g) return result;
        double value = g(time, state, _parameters), increment = evaluator.Increment(step);
        if (!TryVelocity(time, state, _before)) return result;
        for (int i = 0; i < state.Length; i++) _point[i] = state[i] + increment * _before[i];
        double speed = (g(time + increment, _point, _parameters) - value) / increment;
        if (speed == 0) return result;
        for (int k = 0; k < result.Length; k++)
        {
            double change = Shift(k, state, tracker.Value(k));
            result[k] = -(g(time, _point, _parameters) - value) / (change * speed);
            Unshift(k);
        }
        return result;
    }

    /// <summary>Keeps the slope before the event; call before anything is switched.</summary>
    public bool TryBefore(double time, ReadOnlySpan<double> state) => TryVelocity(time, state, _before);

    /// <summary>Carries the tracker's sensitivities over the event; call after everything is switched.</summary>
    /// <param name="change">State change of the event, or null.</param>
    /// <param name="time">Its time.</param>
    /// <param name="stateBefore">State before.</param>
    /// <param name="stateAfter">State after.</param>
    /// <param name="timeDerivatives">Derivative of the time by each parameter.</param>
    public bool TryPass(StateChange? change, double time, ReadOnlySpan<double> stateBefore, ReadOnlySpan<double> stateAfter, ReadOnlySpan<double> timeDerivatives)
    {
        if (!TryVelocity(time, stateAfter, _after)) return false;
        for (int k = 0; k < tracker.Count; k++)
        {
            var s = tracker.Value(k);
            double shift = timeDerivatives[k];
            // Along the path before the event: what arrives at the moved time.
            for (int i = 0; i < s.Length; i++) s[i] += shift * _before[i];
            if (change is not null)
            {
                double size = Shift(k, stateBefore, s);
                change(time + size * shift, _point, _parameters);
                Unshift(k);
                stateBefore.CopyTo(_reference);
                change(time, _reference, _parameters);
                for (int i = 0; i < s.Length; i++) s[i] = (_point[i] - _reference[i]) / size;
            }
            for (int i = 0; i < s.Length; i++) s[i] -= shift * _after[i];
        }
        return true;
    }

    // Moves a parameter and the state along its sensitivity; returns the change of the parameter.
    private double Shift(int k, ReadOnlySpan<double> state, ReadOnlySpan<double> sensitivity)
    {
        double nominal = evaluator.Parameters[k];
        _parameters[k] = nominal + evaluator.Increment(tracker.Scale(k));
        double size = _parameters[k] - nominal;
        for (int i = 0; i < state.Length; i++) _point[i] = state[i] + size * sensitivity[i];
        return size;
    }

    private void Unshift(int k) => _parameters[k] = evaluator.Parameters[k];

    private bool TryVelocity(double time, ReadOnlySpan<double> state, double[] result)
    {
        if (!evaluator.TryEvaluateForSensitivity(time, state, result)) return false;
        var mass = evaluator.Problem.Mass;
        for (int i = 0; i < mass.Length; i++) result[i] /= mass[i];
        return true;
    }
}
