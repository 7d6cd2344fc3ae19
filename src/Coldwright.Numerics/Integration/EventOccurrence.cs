using System.Collections.Immutable;

namespace Coldwright.Numerics.Integration;

/// <summary>An event that happened.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Time">When.</param>
/// <param name="State">State just before it changed anything.</param>
/// <param name="TimeSensitivities">Derivative of the time by each parameter; empty without sensitivities.</param>
public sealed record EventOccurrence(string Name, double Time, ImmutableArray<double> State, ImmutableArray<double> TimeSensitivities);
