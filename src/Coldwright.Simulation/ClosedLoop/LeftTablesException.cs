namespace Coldwright.Simulation.ClosedLoop;

/// <summary>The loop is on its way out of the pressures that its tables were made for: to go on from there with tables made anew.</summary>
internal sealed class LeftTablesException(LoopPass last, string advice) : Exception(advice)
{
    /// <summary>The last pass that had an answer.</summary>
    public LoopPass Last => last;
}
