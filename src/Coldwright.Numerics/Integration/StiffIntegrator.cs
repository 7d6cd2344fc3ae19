namespace Coldwright.Numerics.Integration;

/// <summary>
/// Integrates stiff initial value problems M dy/dt = f(t, y, p) of some 5 to 300 components: Radau IIA of order 5 with adaptive step,
/// dense output, events and forward sensitivities. When to use it, what it costs and how accurate it is: docs/theory/integrator.md.
/// </summary>
public static class StiffIntegrator
{
    /// <summary>Integrates from <paramref name="start"/> to <paramref name="end"/>, or to an event that stops.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="start">First time.</param>
    /// <param name="initial">State there.</param>
    /// <param name="end">Last time, after the first.</param>
    /// <param name="options">Tolerances and limits; null for the defaults.</param>
    /// <param name="events">What may happen on the way.</param>
    /// <param name="observer">Shown every accepted step; it must not keep it.</param>
    /// <param name="cancel">Looked at before every step.</param>
    /// <exception cref="ArgumentException">The problem or the options make no sense; the message has the value and the limit.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; what the observer has been shown stands.</exception>
    public static IntegrationResult Integrate(InitialValueProblem problem, double start, ReadOnlySpan<double> initial, double end,
        IntegrationOptions? options = null, IReadOnlyList<IntegrationEvent>? events = null, Action<AcceptedStep>? observer = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        options ??= new();
        options.CheckLimits();
        if (initial.Length != problem.Count) throw new ArgumentException($"{initial.Length} initial values for {problem.Count} components");
        for (int i = 0; i < initial.Length; i++) if (!double.IsFinite(initial[i])) throw new ArgumentException($"initial value of component {i} is {initial[i]}; a finite number expected");
        if (!double.IsFinite(start) || !double.IsFinite(end) || end <= start) throw new ArgumentException($"the run must end after it starts; it is to go from {start} to {end}");
        return new IntegrationRun(problem, start, initial, end, options, events ?? [], observer, cancel).Run();
    }
}
