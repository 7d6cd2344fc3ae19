using Coldwright.Quantities;
using Coldwright.Runs.Files;

namespace Coldwright.Runs.Logs;

/// <summary>Finds the column of the time and how it is written; the description goes before what is found.</summary>
internal sealed class TimeColumnFinder
{
    private const int RowsLookedAt = 400;
    private const double MostlyShare = 0.9;
    private static readonly string[] _timeWords = ["time", "timestamp", "datetime", "date/time", "date time", "elapsed", "zeit", "uhrzeit", "clock", "t", "sec", "seconds", "heure", "hora", "tijd"];

    private readonly LogShape _shape;
    private readonly LogDescription _log;
    private readonly List<List<byte[]>> _cells = [];
    private readonly List<string> _notes;

    private TimeColumnFinder(ReadOnlySpan<byte> bytes, LogShape shape, LogDescription log, List<string> notes)
    {
        (_shape, _log, _notes) = (shape, log, notes);
        for (var c = 0; c < shape.Columns; c++) _cells.Add([]);
        var walker = new LineWalker(bytes, shape.DataOffset, shape.DataLine - 1);
        for (var rows = 0; rows < RowsLookedAt && walker.Move();)
        {
            if (LogShapeFinder.IsEmpty(walker.Line)) continue;
            rows++;
            var cells = new CellWalker(walker.Line, shape.Delimiter);
            for (var c = 0; c < shape.Columns && cells.Move(); c++) _cells[c].Add(cells.Cell.ToArray());
        }
    }

    /// <summary>The time column; null with a complaint when there is none.</summary>
    /// <param name="bytes">The log.</param>
    /// <param name="shape">Its layout.</param>
    /// <param name="log">Its description.</param>
    /// <param name="notes">Collects what was assumed.</param>
    /// <param name="complaint">What is wrong.</param>
    public static TimeColumn? Find(ReadOnlySpan<byte> bytes, LogShape shape, LogDescription log, List<string> notes, out string complaint) =>
        new TimeColumnFinder(bytes, shape, log, notes).Find(out complaint);

    private TimeColumn? Find(out string complaint)
    {
        complaint = "";
        if (_log.IntervalS is { } interval)
            return new(TimeForm.Interval, -1, -1, interval, true, $"a row every {interval.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)} s");
        var date = -1;
        if (_log.TimeColumn is { } name && Named(name, "time", out complaint) is var column)
        {
            if (column < 0) return null;
        }
        else column = Guess();
        if (_log.DateColumn is { } dateName)
        {
            date = Named(dateName, "date", out complaint);
            if (date < 0) return null;
        }
        if (column < 0)
        {
            complaint = $"no column of the log looks like a time; name it with 'time:' in the group 'log', or give 'interval:' from row to row. The columns are {Columns()}";
            return null;
        }
        var dayFirst = DayFirst(date >= 0 ? date : column);
        var parts = Parts(column, dayFirst);
        var dates = parts.Count(p => p.HasDate);
        var clocks = parts.Count(p => p.HasClock);
        var rows = Math.Max(_cells[column].Count, 1);
        var form = _log.TimeForm;
        if (form is "clock" or "date-time" || form is null && parts.Count >= MostlyShare * rows)
        {
            if (dates > clocks && date < 0)
            {
                // The column found is the date; the clock stands in another one.
                (date, column) = (column, Other(column, p => p is { HasClock: true, HasDate: false }));
                if (column < 0)
                {
                    complaint = $"the column '{_shape.NameOf(date)}' holds dates, but no column holds times of day; name it with 'time:'";
                    return null;
                }
            }
            else if (dates == 0 && date < 0 && form != "clock") date = Other(column, p => p is { HasClock: false, HasDate: true });
            dayFirst = DayFirst(date >= 0 ? date : column);
            if (date >= 0 || dates > 0) return new(TimeForm.DateTime, column, date, 1, dayFirst, date >= 0 ? "date and time in two columns" : "date and time");
            var isElapsed = parts.Any(p => p.ClockS >= 86400) || form is null && (IsHeadedElapsed(column) || StartsAtZero(parts));
            return isElapsed ? new(TimeForm.ElapsedClock, column, -1, 1, dayFirst, "hours, minutes and seconds from the start") : new(TimeForm.Clock, column, -1, 1, dayFirst, "time of day without a date");
        }
        return Number(column, form, out complaint);
    }

    private TimeColumn? Number(int column, string? form, out string complaint)
    {
        complaint = "";
        var numbers = Numbers(column);
        if (numbers.Length < 0.5 * _cells[column].Count || numbers.Length == 0)
        {
            complaint = $"the column '{_shape.NameOf(column)}' does not look like times; the first cell is '{(_cells[column].Count > 0 ? LogBytes.Text(_cells[column][0]) : "")}'";
            return null;
        }
        var typical = numbers.Order().ElementAt(numbers.Length / 2);
        if (form == "spreadsheet") return new(TimeForm.Spreadsheet, column, -1, 86400, true, "days since 30 December 1899");
        // 8e8 s after 1970 is 1995, 5e9 s is 2128.
        foreach (var (size, word) in new[] { (1.0, "seconds"), (1e-3, "thousandths of a second"), (1e-6, "millionths of a second"), (1e-9, "billionths of a second") })
            if (form is "epoch" or null && typical * size is > 8e8 and < 5e9) return new(TimeForm.Epoch, column, -1, size, true, $"{word} since 1970");
        if (form == "epoch")
        {
            complaint = $"the column '{_shape.NameOf(column)}' holds {typical}, which is no count of seconds since 1970";
            return null;
        }
        var unit = Unit(column);
        return new(TimeForm.Elapsed, column, -1, unit.Seconds, true, $"{unit.Word} from the start");
    }

    private (double Seconds, string Word) Unit(int column)
    {
        var heading = _shape.NameOf(column) + " " + (column < _shape.Units.Count ? $"[{_shape.Units[column]}]" : "");
        var word = _log.TimeUnit ?? InBrackets(heading);
        switch (word)
        {
            case "ms" or "msec": return (1e-3, "thousandths of a second");
            case "min" or "minutes": return (60, "minutes");
            case "h" or "hr" or "hours": return (3600, "hours");
            case "s" or "sec" or "seconds": return (1, "seconds");
            default:
                _notes.Add($"the log does not say the unit of '{_shape.NameOf(column)}'; seconds are taken ('time-unit' says it otherwise)");
                return (1, "seconds");
        }
    }

    private static string InBrackets(string heading)
    {
        foreach (var piece in heading.ToLowerInvariant().Split(['[', ']', '(', ')', '/', '_', ' ', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Reverse())
            if (piece is "ms" or "msec" or "s" or "sec" or "seconds" or "min" or "minutes" or "h" or "hr" or "hours") return piece;
        return "";
    }

    private int Guess()
    {
        var times = Enumerable.Range(0, _shape.Columns).Where(c => Parts(c, true).Count >= MostlyShare * Math.Max(_cells[c].Count, 1) || Parts(c, false).Count >= MostlyShare * Math.Max(_cells[c].Count, 1)).ToArray();
        if (times.Length > 0) return times[0];
        var headed = Enumerable.Range(0, _shape.Headings.Count).Where(c => c < _shape.Columns && IsHeaded(c, _timeWords) && IsRising(c)).ToArray();
        if (headed.Length > 0) return headed[0];
        var epoch = Enumerable.Range(0, _shape.Columns).FirstOrDefault(c => IsRising(c) && Numbers(c) is { Length: > 2 } n && n[0] > 8e8, -1);
        if (epoch >= 0) return epoch;
        return _shape.Columns > 0 && IsRising(0) ? 0 : -1;
    }

    private bool IsHeaded(int column, string[] words)
    {
        var heading = _shape.NameOf(column).ToLowerInvariant();
        var cut = heading.IndexOfAny(['[', '(', '_', '/']);
        return words.Contains(heading) || words.Contains((cut > 0 ? heading[..cut] : heading).Trim()) || words.Any(w => w.Length > 3 && heading.StartsWith(w, StringComparison.Ordinal));
    }

    // A log that begins at midnight to the minute is rarer than one that counts from its start.
    private bool StartsAtZero(List<TimeCell.Parts> parts)
    {
        if (parts.Count == 0 || parts[0].ClockS >= 60) return false;
        _notes.Add("the log's clock begins at 00:00, so it is taken to count from the start ('time-form: clock' says it otherwise)");
        return true;
    }

    private bool IsHeadedElapsed(int column)
    {
        var heading = _shape.NameOf(column).ToLowerInvariant();
        return heading.Contains("elapsed", StringComparison.Ordinal) || heading.Contains("runtime", StringComparison.Ordinal) || heading.Contains("relative", StringComparison.Ordinal);
    }

    // Clocks and gaps apart, times rise; a few repeats and one jump are let through.
    private bool IsRising(int column)
    {
        var numbers = Numbers(column);
        if (numbers.Length < 2 || numbers.Length < MostlyShare * _cells[column].Count) return false;
        var falls = numbers.Zip(numbers.Skip(1), (a, b) => b < a).Count(f => f);
        var rises = numbers.Zip(numbers.Skip(1), (a, b) => b > a).Count(f => f);
        return falls <= 0.05 * numbers.Length && rises >= 0.3 * numbers.Length;
    }

    private int Named(string name, string key, out string complaint)
    {
        complaint = "";
        var column = _shape.Find(name);
        if (column >= 0) return column;
        var near = NearestWord.Find(name, _shape.Headings).FirstOrDefault();
        complaint = $"{key}: the log has no column '{name}'; " + (near is null ? $"the columns are {Columns()}" : $"the nearest is '{near}'");
        return -1;
    }

    private string Columns() => _shape.Headings.Count > 0 ? string.Join(", ", _shape.Headings.Take(20)) : $"1 to {_shape.Columns}, without headings";

    private int Other(int column, Func<TimeCell.Parts, bool> fits) =>
        Enumerable.Range(0, _shape.Columns).FirstOrDefault(c => c != column && _cells[c].Count > 0 && (Count(c, true, fits) || Count(c, false, fits)), -1);

    private bool Count(int column, bool dayFirst, Func<TimeCell.Parts, bool> fits) => Parts(column, dayFirst).Count(fits) >= MostlyShare * _cells[column].Count;

    private bool DayFirst(int column)
    {
        if (_log.DateOrder is { } order) return order == "day-first";
        int day = 0, month = 0, either = 0;
        foreach (var cell in _cells[column])
        {
            if (!TimeCell.TryRead(cell, true, out var p) && !TimeCell.TryRead(cell, false, out p) || p.First == 0) continue;
            if (p.First > 12) day++;
            else if (p.Second > 12) month++;
            // A point between the groups is written day first everywhere.
            else if (cell.AsSpan().Count((byte)'.') >= 2) day++;
            else either++;
        }
        if (either > 0 && day == 0 && month == 0) _notes.Add("day and month of the log's dates could be swapped; the day is taken to come first ('date-order' says it otherwise)");
        return day >= month;
    }

    private List<TimeCell.Parts> Parts(int column, bool dayFirst)
    {
        var parts = new List<TimeCell.Parts>();
        foreach (var cell in _cells[column])
            if (TimeCell.TryRead(cell, dayFirst, out var p)) parts.Add(p);
        return parts;
    }

    private double[] Numbers(int column)
    {
        var numbers = new List<double>();
        foreach (var cell in _cells[column])
            if (NumberCell.Read(cell, _shape.DecimalComma, out var v, out _, out var rest) == CellContent.Number && rest.Length <= 3) numbers.Add(v);
        return [.. numbers];
    }
}
