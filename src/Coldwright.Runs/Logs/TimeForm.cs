namespace Coldwright.Runs.Logs;

/// <summary>How a log writes its times.</summary>
internal enum TimeForm
{
    /// <summary>Date and time in one cell or in two.</summary>
    DateTime,
    /// <summary>Time of day alone.</summary>
    Clock,
    /// <summary>Seconds, or thousandths and so on, since 1970.</summary>
    Epoch,
    /// <summary>A number that counts from the start.</summary>
    Elapsed,
    /// <summary>Hours, minutes and seconds that count from the start.</summary>
    ElapsedClock,
    /// <summary>Days since 30 December 1899, as spreadsheets count.</summary>
    Spreadsheet,
    /// <summary>No time column; the rows are a known interval apart.</summary>
    Interval,
}
