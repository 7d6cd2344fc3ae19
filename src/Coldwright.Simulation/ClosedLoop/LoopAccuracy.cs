using Coldwright.Machine.Streams;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>How finely the closed loop is solved.</summary>
internal sealed record LoopAccuracy
{
    /// <summary>Cells of the recuperator.</summary>
    public int RecuperatorCells { get; init; } = 60;
    /// <summary>Cells on the way to an answer, where balances are left open by <see cref="Rough"/>.</summary>
    public int RoughCells { get; init; } = 24;
    /// <summary>Balances of the recuperator on the way, relative to its heat; answers are made at its own usual tolerance.</summary>
    public double RecuperatorTolerance { get; init; } = 1e-9;
    /// <summary>Sampling of the isobars.</summary>
    public StreamTableOptions Tables { get; init; } = new(0.05, 0.003, 0.03);
    /// <summary>Sampling on the way.</summary>
    public StreamTableOptions RoughTables { get; init; } = new(0.3, 0.02, 0.2, 10, 0.15);
    /// <summary>Largest balance left on the way, and at the answers.</summary>
    public double Rough { get; init; } = 2e-3;
    public double Tight { get; init; } = 2e-9;
}
