namespace Coldwright.Blind.SecondHand;

/// <summary>How times stand in a log.</summary>
public enum ClockForm
{
    /// <summary>2026-06-13T09:05:10.</summary>
    Iso,
    /// <summary>13.06.2026 09:05:10.</summary>
    DayFirst,
    /// <summary>Date and time in two columns.</summary>
    TwoColumns,
    /// <summary>Seconds since 1970.</summary>
    Epoch,
    /// <summary>Minutes from the log's first row.</summary>
    ElapsedMinutes,
    /// <summary>Clock alone; the run goes on past midnight.</summary>
    Clock,
}
