namespace Coldwright.Runs.Live;

/// <summary>
/// Puts messages of a broker into a log and counts what was left out. A message that the broker had kept from before (retained) is left out: nobody knows when it was measured.
/// </summary>
public sealed class TopicLog : IDisposable
{
    private readonly TopicTable _table;
    private readonly IReadOnlyList<string> _filters;
    private readonly Func<DateTime> _now;
    private readonly HashSet<string> _heard = new(StringComparer.Ordinal);

    /// <param name="path">The log; it must not be there yet.</param>
    /// <param name="columns">Columns whose topics are known (<see cref="TopicColumn"/>).</param>
    /// <param name="filters">Filters whose topics become columns when a number comes; may be none.</param>
    /// <param name="now">Clock.</param>
    public TopicLog(string path, IReadOnlyList<string> columns, IReadOnlyList<string> filters, Func<DateTime> now)
    {
        _table = new(path, columns);
        (_filters, _now) = (filters, now);
        LastHeard = now();
    }

    /// <summary>Messages written.</summary>
    public int Written { get; private set; }
    /// <summary>Messages left out because they held no number for the log.</summary>
    public int LeftOut { get; private set; }
    /// <summary>Messages left out because the broker had kept them from before.</summary>
    public int Kept { get; private set; }
    /// <summary>Rows of the log.</summary>
    public int Rows => _table.Rows;
    /// <summary>The last topic that was written; empty before the first.</summary>
    public string LastTopic { get; private set; } = "";
    /// <summary>When a message came last; before the first, when the log was made.</summary>
    public DateTime LastHeard { get; private set; }
    /// <summary>Columns in the order of the log.</summary>
    public IReadOnlyList<string> Columns => _table.Columns;
    /// <summary>Columns that got nothing.</summary>
    public IReadOnlyList<string> Silent => [.. _table.Columns.Where(c => !_heard.Contains(c))];

    /// <summary>Writes a message; when it returns, the message is on disk.</summary>
    /// <param name="topic">Topic.</param>
    /// <param name="payload">Bytes of the message.</param>
    /// <param name="isKept">True when the broker had kept it from before.</param>
    public void Take(string topic, ReadOnlySpan<byte> payload, bool isKept)
    {
        LastHeard = _now();
        if (isKept)
        {
            Kept++;
            return;
        }
        var takesNew = _filters.Any(f => TopicFilter.Covers(f, topic));
        var cells = MessageCells.Of(topic, payload, _table.Has, takesNew);
        if (_table.Columns.Count + cells.Count > TopicTable.MostColumns) cells = [.. cells.Where(c => _table.Has(c.Column))];
        cells = [.. cells.Where(c => TopicColumn.CanBeHeading(c.Column)).DistinctBy(c => c.Column)];
        if (cells.Count == 0)
        {
            LeftOut++;
            return;
        }
        _table.Put(LastHeard, cells);
        (Written, LastTopic) = (Written + 1, topic);
        foreach (var (column, _) in cells) _heard.Add(column);
    }

    /// <inheritdoc/>
    public void Dispose() => _table.Dispose();
}
