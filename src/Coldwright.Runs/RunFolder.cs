using Coldwright.Machine.Files;
using Coldwright.Runs.Record;

namespace Coldwright.Runs;

/// <summary>A run's folder as read.</summary>
public sealed record RunFolder
{
    /// <summary>The folder.</summary>
    public required string Directory { get; init; }
    /// <summary>The record; null when there are problems.</summary>
    public RunRecord? Record { get; init; }
    /// <summary>The cooler's folder as read; null when it was not looked for or not found.</summary>
    public MachineFolder? Cooler { get; init; }
    /// <summary>Everything wrong with the description or with how it fits the log.</summary>
    public required IReadOnlyList<FileProblem> Problems { get; init; }
}
