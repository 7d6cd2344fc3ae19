using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;

namespace Coldwright.Machine.Files;

/// <summary>What was read from a machine folder.</summary>
public sealed record MachineFolder
{
    /// <summary>The folder as given.</summary>
    public required string Directory { get; init; }
    /// <summary>The machine; null when its file has problems.</summary>
    public MachineDescription? Machine { get; init; }
    /// <summary>The machine's parts in the order the gas meets them; null when the file has problems or the solvers cannot handle the layout.</summary>
    public LoopLayout? Layout { get; init; }
    /// <summary>The shop; null when its file is missing (a note says so) or has problems.</summary>
    public ShopDescription? Shop { get; init; }
    /// <summary>Every problem found, in file order; empty when the folder is good.</summary>
    public required IReadOnlyList<FileProblem> Problems { get; init; }
    /// <summary>What was done for the writer and what is left out; never an error.</summary>
    public required IReadOnlyList<string> Notes { get; init; }
    /// <summary>True when there is no problem.</summary>
    public bool IsGood => Problems.Count == 0;
}
