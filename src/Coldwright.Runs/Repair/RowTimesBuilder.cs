using System.Globalization;
using Coldwright.Runs.Logs;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Repair;

/// <summary>
/// Makes one rising time axis of the times in a log: midnight, a clock that was set, rows written twice, rows that share a time, gaps.
/// Nothing is guessed in silence: each step that is not the usual one becomes a fault.
/// </summary>
internal sealed class RowTimesBuilder
{
    private const double DayS = 86400;
    // A step this many times the usual one is no jitter. Our assumption.
    private const double GapSteps = 5;
    private const int MostFaults = 200;
    private const double LongestPlainCopyS = 600;

    private readonly LogTable _log;
    private readonly string _forward;
    private readonly List<Fault> _faults = [];
    private readonly List<int> _rows = [];
    private readonly List<double> _times = [];
    private readonly List<double> _stamps = [];
    private int _notShown;

    private RowTimesBuilder(LogTable log, string forwardJumps) => (_log, _forward) = (log, forwardJumps);

    /// <summary>The axis; no rows when no time can be read.</summary>
    /// <param name="log">The rows.</param>
    /// <param name="forwardJumps"><c>judge</c>, <c>gap</c> or <c>clock</c>.</param>
    public static RowTimes Build(LogTable log, string forwardJumps) => new RowTimesBuilder(log, forwardJumps).Build();

    private RowTimes Build()
    {
        var step = UsualStep();
        int noTime = 0, firstNoTime = 0, repeats = 0;
        (double At, int Line) firstRepeat = default;
        double shift = 0;
        var stamps = _log.Times;
        var isCoarse = IsCoarse();
        for (var i = 0; i < stamps.Length; i++)
        {
            if (double.IsNaN(stamps[i]))
            {
                if (noTime++ == 0) firstNoTime = _log.Lines[i];
                continue;
            }
            var t = stamps[i] + shift;
            if (_times.Count == 0)
            {
                Keep(i, t);
                continue;
            }
            var before = _times[^1];
            if (_log.Time.Form == TimeForm.Clock && t - before < -DayS / 2)
            {
                shift += DayS;
                t += DayS;
                Add(new(FaultKind.Midnight, "", before, t, 1, _log.Lines[i], "midnight passed on a clock without a date; a day was added"));
            }
            if ((t < before || t == before && !isCoarse) && WrittenAlready(i, step) is var copies and > 0)
            {
                if (repeats == 0) firstRepeat = (before, _log.Lines[i]);
                repeats += copies;
                i += copies - 1;
                continue;
            }
            if (t < before)
            {
                // One row out of order among good ones is dropped; a clock that stays back is carried on.
                var next = NextStamp(i);
                if (next is { } n && n + shift > before && n + shift - before < GapSteps * step)
                {
                    Add(new(FaultKind.OddRow, "", before, before, 1, _log.Lines[i], $"a row out of order, {Seconds(before - t)} before its neighbour, was left out"));
                    continue;
                }
                var back = before + step - t;
                shift += back;
                Add(new(FaultKind.ClockJump, "", before, before + step, 1, _log.Lines[i], $"the clock went back by {Seconds(back)}; the rows from here on were moved forward by as much"));
                t = before + step;
            }
            else if (t - before > Math.Max(GapSteps * step, 1e-6)) t = Forward(i, before, t, step, ref shift);
            Keep(i, t);
        }
        Spread(step);
        if (noTime > 0) Add(new(FaultKind.NoTime, "", 0, 0, noTime, firstNoTime, $"{noTime} rows whose time cannot be read were left out"));
        if (repeats > 0) Add(new(FaultKind.Repeat, "", firstRepeat.At, firstRepeat.At, repeats, firstRepeat.Line, $"{repeats} rows were written twice; the second copies were left out"));
        var first = _times.Count > 0 ? _times[0] : 0;
        if (_notShown > 0) _faults.Add(new(FaultKind.Gap, "", 0, 0, _notShown, 0, $"{_notShown} more gaps and jumps of the clock are not listed"));
        return new([.. _rows], [.. _times.Select(t => t - first)], _stamps.Count > 0 ? _stamps[0] : 0, step, [.. _faults.Select(f => f with { FromS = Math.Max(f.FromS - first, 0), ToS = Math.Max(f.ToS - first, 0) })]);
    }

    private double Forward(int i, double before, double t, double step, ref double shift)
    {
        var gap = t - before;
        var isClock = _forward switch
        {
            "gap" => false,
            "clock" => true,
            _ => ClockJumpJudge.IsClock(_log, _rows, _times, i, t - step - before, step),
        };
        if (!isClock)
        {
            Add(new(FaultKind.Gap, "", before, t, 1, _log.Lines[i], $"nothing was logged for {Seconds(gap)}; nothing was filled in"));
            return t;
        }
        shift -= gap - step;
        Add(new(FaultKind.ClockJump, "", before, before + step, 1, _log.Lines[i], $"the clock went forward by {Seconds(gap - step)} while the readings went on as if nothing had passed; the rows from here on were moved back by as much"));
        return before + step;
    }

    private void Keep(int row, double time)
    {
        _rows.Add(row);
        _times.Add(time);
        _stamps.Add(_log.Times[row]);
    }

    // Rows with the times and figures of rows that were kept: a buffer written out twice. How many rows from here on are copies.
    private int WrittenAlready(int row, double step)
    {
        var stamp = _log.Times[row];
        for (int k = _stamps.Count - 1, looked = 0; k >= 0 && looked < 5000; k--, looked++)
        {
            if (_stamps[k] < stamp) return 0;
            if (_stamps[k] != stamp || !IsSame(_rows[k], row)) continue;
            int n = 1, changes = 0;
            while (k + n < _stamps.Count && row + n < _log.Times.Length && _stamps[k + n] == _log.Times[row + n] && IsSame(_rows[k + n], row + n))
            {
                if (!IsSame(row + n, row + n - 1)) changes++;
                n++;
            }
            // On a plateau an hour of a clock that was set back looks the same as an hour before it.
            return changes > 0 || n * step < LongestPlainCopyS ? n : 0;
        }
        return 0;
    }

    // Where neighbours often share a time and differ, the clock is slower than the logger, and two equal rows are two readings.
    private bool IsCoarse()
    {
        int same = 0, different = 0;
        for (var i = 1; i < _log.Times.Length; i++)
        {
            if (_log.Times[i] != _log.Times[i - 1]) continue;
            if (IsSame(i, i - 1)) same++;
            else different++;
        }
        return different > same;
    }

    private bool IsSame(int a, int b)
    {
        var anything = false;
        foreach (var column in _log.Columns)
        {
            if (column.Values[a] != column.Values[b] || column.Flags[a] != column.Flags[b]) return false;
            anything = true;
        }
        return anything;
    }

    private double? NextStamp(int row)
    {
        for (var i = row + 1; i < _log.Times.Length && i < row + 10; i++)
            if (!double.IsNaN(_log.Times[i])) return _log.Times[i];
        return null;
    }

    // Rows that share a time were written faster than the clock counts: they are spread up to the next time.
    private void Spread(double step)
    {
        int shared = 0, firstLine = 0;
        for (var i = 0; i < _times.Count;)
        {
            var end = i + 1;
            while (end < _times.Count && _times[end] <= _times[i]) end++;
            var n = end - i;
            if (n > 1)
            {
                if (shared == 0) firstLine = _log.Lines[_rows[i]];
                shared += n;
                var room = end < _times.Count ? _times[end] - _times[i] : step;
                var each = Math.Min(room / n, step);
                var start = _times[i];
                for (var k = 1; k < n; k++) _times[i + k] = start + k * each;
            }
            i = end;
        }
        if (shared > 0) Add(new(FaultKind.CoarseClock, "", _times[0], _times[^1], shared, firstLine, $"{shared} rows share their time with a neighbour; they were spread evenly up to the next time"));
    }

    private double UsualStep()
    {
        var steps = new List<double>();
        for (var i = 1; i < _log.Times.Length && steps.Count < 20000; i++)
            if (_log.Times[i] - _log.Times[i - 1] is var d && d > 0) steps.Add(d);
        if (steps.Count == 0) return 1;
        steps.Sort();
        return steps[steps.Count / 2];
    }

    private void Add(Fault fault)
    {
        if (_faults.Count < MostFaults) _faults.Add(fault);
        else _notShown++;
    }

    private static string Seconds(double s) => s switch
    {
        >= 7200 => (s / 3600).ToString("0.##", CultureInfo.InvariantCulture) + " h",
        >= 120 => (s / 60).ToString("0.#", CultureInfo.InvariantCulture) + " min",
        _ => s.ToString("0.##", CultureInfo.InvariantCulture) + " s",
    };
}
