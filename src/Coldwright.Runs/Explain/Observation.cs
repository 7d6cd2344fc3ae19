namespace Coldwright.Runs.Explain;

/// <summary>A record read as a run of its machine: its trace, the channels behind it, its phases.</summary>
public sealed record Observation
{
    /// <summary>The trace.</summary>
    public required Trace Trace { get; init; }
    /// <summary>Channels behind it, one for each observable.</summary>
    public required IReadOnlyList<ObservedChannel> Channels { get; init; }
    /// <summary>Phases, times from the start of the record.</summary>
    public required IReadOnlyList<RunPhase> Phases { get; init; }
    /// <summary>Start of the compressor, s from the start of the record.</summary>
    public required double StartS { get; init; }
    /// <summary>Standard uncertainty of that moment, s.</summary>
    public required double StartDoubtS { get; init; }
    /// <summary>Standard uncertainty of its stop, s.</summary>
    public required double StopDoubtS { get; init; }
    /// <summary>True when nothing but the load shows the start.</summary>
    public required bool IsStartByLoad { get; init; }
    /// <summary>Standard uncertainty of the room's temperature, K.</summary>
    public required double RoomDoubtK { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<string> Said { get; init; }
}
