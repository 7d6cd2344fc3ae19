namespace Coldwright.Runs.Logs;

/// <summary>The rows of a log before anything is judged.</summary>
internal sealed class LogTable
{
    /// <summary>Layout.</summary>
    public required LogShape Shape { get; init; }
    /// <summary>Time column.</summary>
    public required TimeColumn Time { get; init; }
    /// <summary>Times as written: since 2000, of the day, or from the start; NaN where a time cannot be read.</summary>
    public required double[] Times { get; init; }
    /// <summary>Line of each row, from 1.</summary>
    public required int[] Lines { get; init; }
    /// <summary>The columns that were asked for.</summary>
    public required IReadOnlyList<LogColumn> Columns { get; init; }
    /// <summary>Lines that hold no data (a heading again, remarks): how many, and the first.</summary>
    public required (int Count, int FirstLine) OddRows { get; init; }
    /// <summary>Rows with fewer cells than needed: how many, and the first.</summary>
    public required (int Count, int FirstLine) ShortRows { get; init; }
    /// <summary>Line of a last row that is cut off; 0 when there is none.</summary>
    public required int CutLine { get; init; }
    /// <summary>Local time less universal time in the first row, s; NaN when the log does not say.</summary>
    public required double OffsetS { get; init; }
    /// <summary>What was assumed on the way.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The column of that index.</summary>
    public LogColumn Column(int index) => Columns.First(c => c.Index == index);
}
