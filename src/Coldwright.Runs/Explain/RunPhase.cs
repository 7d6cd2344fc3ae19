namespace Coldwright.Runs.Explain;

/// <summary>A part of a run.</summary>
/// <param name="Kind"><c>rest</c>, <c>pull-down</c>, <c>plateau</c>, <c>feeding</c>, <c>condensing</c>, <c>discharge</c>, <c>warm-up</c>.</param>
/// <param name="FromS">s from the start of the record.</param>
/// <param name="ToS">s.</param>
public sealed record RunPhase(string Kind, double FromS, double ToS);
