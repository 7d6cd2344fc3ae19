namespace Coldwright.Runs.Record;

/// <summary>What may be wrong with a log.</summary>
public enum FaultKind
{
    /// <summary>Cells without a value.</summary>
    Missing,
    /// <summary>Cells that hold no number.</summary>
    Unreadable,
    /// <summary>Readings outside the sensor or outside what can be true.</summary>
    OutOfRange,
    /// <summary>Spikes.</summary>
    Spike,
    /// <summary>A frozen stretch.</summary>
    Frozen,
    /// <summary>Nothing was logged for a while.</summary>
    Gap,
    /// <summary>Rows written twice.</summary>
    Repeat,
    /// <summary>The logger's clock moved.</summary>
    ClockJump,
    /// <summary>Midnight passed on a clock without a date.</summary>
    Midnight,
    /// <summary>Several rows share one time.</summary>
    CoarseClock,
    /// <summary>Rows that are no data: a repeated header, remarks, a cut last line.</summary>
    OddRow,
    /// <summary>Rows whose time cannot be read.</summary>
    NoTime,
}

/// <summary>Something found in a log, where, and what was done about it. The file itself is never changed.</summary>
/// <param name="Kind">What.</param>
/// <param name="Channel">Channel concerned; empty when it is the log as a whole.</param>
/// <param name="FromS">Where it begins, s from the start.</param>
/// <param name="ToS">Where it ends, s from the start.</param>
/// <param name="Count">Samples or rows concerned.</param>
/// <param name="Line">Line of the log where it begins, from 1; 0 when it is not known.</param>
/// <param name="Text">One sentence: what was found and what was done.</param>
public sealed record Fault(FaultKind Kind, string Channel, double FromS, double ToS, int Count, int Line, string Text);
