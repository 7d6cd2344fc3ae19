using Coldwright.Machine.Streams;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>How finely the closed loop is solved.</summary>
internal sealed record LoopAccuracy
{
    /// <summary>Cells of the recuperator.</summary>
    public int RecuperatorCells { get; init; } = 60;
    /// <summary>Balances of the recuperator on the way, relative to its heat; answers are made at its own usual tolerance.</summary>
    public double RecuperatorTolerance { get; init; } = 1e-9;
    /// <summary>Sampling of the isobars.</summary>
    public StreamTableOptions Tables { get; init; } = StreamTableOptions.Default;
    /// <summary>Largest balance left on the way, and at the answers.</summary>
    public double Rough { get; init; } = 2e-3;
    public double Tight { get; init; } = 2e-9;
}
