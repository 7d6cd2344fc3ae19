namespace Coldwright.Simulation.ClosedLoop;

/// <summary>How carefully the parts are asked in a pass round the loop.</summary>
internal enum LoopCare
{
    /// <summary>Each by its own model, to rounding.</summary>
    Exact,
    /// <summary>Exact but for the precooler, which answers by its tables as they were corrected last.</summary>
    Near,
    /// <summary>On the way to an answer: fewer cells, wider tolerances.</summary>
    Rough,
}
