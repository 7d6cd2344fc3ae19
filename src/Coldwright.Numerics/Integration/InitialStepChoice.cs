namespace Coldwright.Numerics.Integration;

/// <summary>
/// First step from the size of state, slope and change of slope (Hairer, Norsett, Wanner, Solving Ordinary Differential Equations I,
/// section II.4), for an error estimate of order 3.
/// </summary>
internal static class InitialStepChoice
{
    public static double Choose(ProblemEvaluator evaluator, ErrorNorm norm, double time, ReadOnlySpan<double> state, ReadOnlySpan<double> slope, double span, Span<double> work, Span<double> other)
    {
        var mass = evaluator.Problem.Mass;
        for (int i = 0; i < state.Length; i++) work[i] = Slope(slope[i], i);
        double size = norm.Controlled(state), speed = norm.Controlled(work);
        double first = size < 1e-5 || speed < 1e-5 ? 1e-6 * span : Math.Min(0.01 * size / speed, span);
        for (int i = 0; i < state.Length; i++) work[i] = state[i] + first * work[i];
        if (!evaluator.TryEvaluate(time + first, work, other)) return 0.01 * first;
        for (int i = 0; i < state.Length; i++) work[i] = Slope(other[i] - slope[i], i);
        double change = Math.Max(speed, norm.Controlled(work) / first);
        double second = change <= 1e-15 ? 1e3 * first : Math.Pow(0.01 / change, 0.25);
        return Math.Min(Math.Min(100 * first, second), span);

        double Slope(double f, int i) => mass.Length == 0 ? f : mass[i] == 0 ? 0 : f / mass[i];
    }
}
