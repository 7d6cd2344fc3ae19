using Coldwright.Runs.Files;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Logs;

/// <summary>Reads the rows of a log. Any bytes are read without an exception; what is no data is counted.</summary>
internal static class LogReader
{
    private const int RowsPerLook = 8192, LeastSteps = 3;

    /// <summary>The rows; null with a complaint when the log cannot be read.</summary>
    /// <param name="bytes">The log, from <see cref="LogBytes"/>.</param>
    /// <param name="log">Its description.</param>
    /// <param name="columns">Columns wanted, by heading or number, each with the unit word that may stand behind its numbers.</param>
    /// <param name="complaints">What is wrong; empty when rows are returned.</param>
    /// <param name="cancel">Stops the work.</param>
    public static LogTable? Read(ReadOnlySpan<byte> bytes, LogDescription log, IReadOnlyList<(string Column, string UnitWord)> columns, out IReadOnlyList<string> complaints, CancellationToken cancel)
    {
        var wrong = new List<string>();
        complaints = wrong;
        if (LogShapeFinder.Find(bytes, log) is not { } shape)
        {
            wrong.Add(bytes.Length == 0 ? "the log is empty" : "the log holds no two rows of numbers that look alike; 'delimiter' and 'decimal' in the group 'log' may help");
            return null;
        }
        var notes = new List<string>();
        var time = TimeColumnFinder.Find(bytes, shape, log, notes, out var complaint);
        if (time is null) wrong.Add(complaint);
        var wanted = new SortedDictionary<int, (LogColumn Data, List<byte[]> Units)>();
        foreach (var (name, unit) in columns)
        {
            var index = shape.Find(name);
            if (shape.Headings.Count(h => h == name) is var alike and > 1) notes.Add($"the log has {alike} columns called '{name}'; the first is taken (a column's number says which)");
            if (index < 0) wrong.Add(NoColumn(shape, name));
            else
            {
                if (!wanted.TryGetValue(index, out var entry)) wanted[index] = entry = (new LogColumn(index), []);
                if (unit.Length > 0) entry.Units.Add(System.Text.Encoding.UTF8.GetBytes(unit));
            }
        }
        return wrong.Count > 0 ? null : Rows(bytes, shape, time!, [.. wanted.Values], notes, cancel);
    }

    private static LogTable Rows(ReadOnlySpan<byte> bytes, LogShape shape, TimeColumn time, (LogColumn Data, List<byte[]> Units)[] wanted, List<string> notes, CancellationToken cancel)
    {
        var times = new List<double>();
        var lines = new List<int>();
        (int Count, int First) odd = (0, 0), shorter = (0, 0);
        var cut = 0;
        var offset = double.NaN;
        var last = Math.Max(Math.Max(time.Column, time.DateColumn), wanted.Select(w => w.Data.Index).DefaultIfEmpty(-1).Max());
        var row = new (double Value, SampleFlag Flag, int Decimals)[wanted.Length];
        var walker = new LineWalker(bytes, shape.DataOffset, shape.DataLine - 1);
        while (walker.Move())
        {
            if (walker.Number % RowsPerLook == 0) cancel.ThrowIfCancellationRequested();
            var line = walker.Line;
            if (LogShapeFinder.IsEmpty(line)) continue;
            Array.Fill(row, (0, SampleFlag.Missing, 0));
            ReadOnlySpan<byte> timeCell = default, dateCell = default;
            int c = 0, w = 0, numbers = 0;
            for (var cells = new CellWalker(line, shape.Delimiter); c <= last && cells.Move(); c++)
            {
                if (c == time.Column) timeCell = cells.Cell;
                if (c == time.DateColumn) dateCell = cells.Cell;
                if (w >= wanted.Length || wanted[w].Data.Index != c) continue;
                row[w] = Cell(cells.Cell, shape.DecimalComma, wanted[w].Units);
                if (row[w].Flag == SampleFlag.Good) numbers++;
                w++;
            }
            var t = time.Form == TimeForm.Interval ? times.Count * time.UnitS : time.Read(timeCell, dateCell, shape.DecimalComma);
            var isShort = c <= last;
            if (!walker.HasEnd && (isShort || double.IsNaN(t)))
            {
                cut = walker.Number;
                continue;
            }
            if (line[0] == '#' || numbers == 0 && (double.IsNaN(t) || time.Form == TimeForm.Interval))
            {
                odd = (odd.Count + 1, odd.First == 0 ? walker.Number : odd.First);
                continue;
            }
            if (isShort) shorter = (shorter.Count + 1, shorter.First == 0 ? walker.Number : shorter.First);
            if (double.IsNaN(offset) && time.Form == TimeForm.DateTime && TimeCell.TryRead(timeCell, time.DayFirst, out var parts)) offset = parts.OffsetS;
            times.Add(t);
            lines.Add(walker.Number);
            for (var i = 0; i < wanted.Length; i++) wanted[i].Data.Add(row[i].Value, row[i].Flag, row[i].Decimals);
        }
        if (time.Form != TimeForm.Interval && RunsBackwards(times))
        {
            times.Reverse();
            lines.Reverse();
            foreach (var (data, _) in wanted) data.TurnRound();
            notes.Add("the log's newest row stands first; it was read from its end");
        }
        return new LogTable
        {
            Shape = shape,
            Time = time,
            Times = [.. times],
            Lines = [.. lines],
            Columns = [.. wanted.Select(x => x.Data)],
            OddRows = odd,
            ShortRows = shorter,
            CutLine = cut,
            OffsetS = offset,
            Notes = notes,
        };
    }

    // nearly every step goes back: a logger that writes its newest row on top, not a clock that was set
    private static bool RunsBackwards(List<double> times)
    {
        int back = 0, steps = 0;
        for (var i = 1; i < times.Count; i++)
        {
            if (double.IsNaN(times[i]) || double.IsNaN(times[i - 1]) || times[i] == times[i - 1]) continue;
            steps++;
            if (times[i] < times[i - 1]) back++;
        }
        return steps >= LeastSteps && back >= 0.9 * steps;
    }

    private static (double, SampleFlag, int) Cell(ReadOnlySpan<byte> cell, bool comma, List<byte[]> units)
    {
        switch (NumberCell.Read(cell, comma, out var value, out var decimals, out var rest))
        {
            case CellContent.Number:
                return rest.IsEmpty || IsUnit(rest, units) ? (value, SampleFlag.Good, decimals) : (0, SampleFlag.Unreadable, 0);
            case CellContent.Nothing: return (0, SampleFlag.Missing, 0);
            case CellContent.Beyond: return (0, SampleFlag.OutOfRange, 0);
            default: return (0, SampleFlag.Unreadable, 0);
        }
    }

    private static bool IsUnit(ReadOnlySpan<byte> rest, List<byte[]> units)
    {
        foreach (var unit in units)
            if (rest.SequenceEqual(unit)) return true;
        // "23.5 C" for °C, and a degree sign in Latin-1
        var word = LogBytes.Text(rest).TrimStart('°', ' ', 'º');
        return units.Any(u => string.Equals(LogBytes.Text(u).TrimStart('°'), word, StringComparison.OrdinalIgnoreCase));
    }

    private static string NoColumn(LogShape shape, string name)
    {
        var near = Quantities.NearestWord.Find(name, shape.Headings).FirstOrDefault();
        var known = shape.Headings.Count > 0 ? $"the columns are {string.Join(", ", shape.Headings.Take(30))}" : $"the log has {shape.Columns} columns without headings; name them 1 to {shape.Columns}";
        return $"the log has no column '{(name.Length > 40 ? name[..40] + "…" : name)}'; " + (near is null ? known : $"the nearest is '{near}'");
    }
}
