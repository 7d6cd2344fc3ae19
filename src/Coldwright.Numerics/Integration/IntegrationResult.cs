using System.Collections.Immutable;

namespace Coldwright.Numerics.Integration;

/// <summary>Where a run ended and how. After a failure, time and state are those of the last accepted step.</summary>
/// <param name="Report">Status; where it failed, why, and what to do. Its residual is the last error estimate against the tolerance.</param>
/// <param name="Time">Time reached.</param>
/// <param name="State">State there.</param>
/// <param name="Sensitivities">dy/dp there, one array of components a parameter; empty when not asked for.</param>
/// <param name="Events">What happened, in order of time.</param>
/// <param name="StoppedBy">Name of the event that ended the run; null when it reached the end or failed.</param>
/// <param name="Statistics">Cost.</param>
public sealed record IntegrationResult(SolveReport Report, double Time, ImmutableArray<double> State, ImmutableArray<ImmutableArray<double>> Sensitivities,
    ImmutableArray<EventOccurrence> Events, string? StoppedBy, IntegrationStatistics Statistics)
{
    /// <summary>True when the end, or an event that stops, was reached.</summary>
    public bool Solved => Report.Solved;

    /// <summary>This result, or an exception that carries the report of the failure.</summary>
    public IntegrationResult OrThrow() => Solved ? this : throw new SolveException(Report);
}
