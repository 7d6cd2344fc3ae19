namespace Coldwright.Runs.Explain;

/// <summary>Several observables of one run and the moments that part it. Times count from the start of the compressor.</summary>
public sealed record Trace
{
    /// <summary>What is known of the machine.</summary>
    public required IReadOnlyDictionary<Observable, TraceLine> Lines { get; init; }
    /// <summary>End of the pull-down with its plateau: feed opened, or compressor stopped, s.</summary>
    public required double EndS { get; init; }
    /// <summary>Compressor stopped, s; null when the record ends before.</summary>
    public double? StopS { get; init; }
    /// <summary>End of the record, s.</summary>
    public required double LastS { get; init; }
    /// <summary>True for a model's run: everything stands at the room's temperature before the start.</summary>
    public bool BeginsAtRest { get; init; }
    /// <summary>Pressure of the loop at rest, everything warm, Pa; null when not seen.</summary>
    public double? RestPa { get; init; }
    /// <summary>Room, K.</summary>
    public required double RoomK { get; init; }
    /// <summary>Product put in, taken out and seen; null when nothing was fed.</summary>
    public BatchTrace? Batch { get; init; }
}
