namespace Coldwright.Machine.Throttling;

/// <summary>How finely a march is made.</summary>
/// <param name="NodesPerFold">Flashed nodes for each factor e of pressure, 2 to 200.</param>
/// <param name="CellsPerNode">Cells of the integration between two of them, 1 to 200.</param>
public sealed record CapillaryResolution(int NodesPerFold, int CellsPerNode)
{
    private const int FewestIntervals = 10;

    /// <summary>9 nodes, 10 cells each.</summary>
    public static CapillaryResolution Default { get; } = new(9, 10);

    internal int Intervals(double fromPa, double toPa)
    {
        ThrottleGuard.Within(NodesPerFold, 2, 200, nameof(NodesPerFold), "nodes");
        ThrottleGuard.Within(CellsPerNode, 1, 200, nameof(CellsPerNode), "cells");
        return Math.Max((int)Math.Ceiling(NodesPerFold * Math.Log(fromPa / toPa)), FewestIntervals);
    }
}
