using Coldwright.Machine.Files;

namespace Coldwright.Runs.Files;

/// <summary>Turns moments into seconds from the start. A bare clock time is the next one after the moment before it, so notes run on across midnight.</summary>
/// <param name="start">Wall clock of time zero; null when nothing says it.</param>
/// <param name="dateOnly">True when only the date of the start is known, so that the first time of day falls on it.</param>
/// <param name="problems">Collects moments that cannot be placed.</param>
internal sealed class MomentResolver(DateTime? start, bool dateOnly, ProblemList problems)
{
    private const double DayS = 86400;
    // Notes are often a little out of order.
    private const double DisorderS = 3600;

    private double? _before;

    /// <summary>Starts a new list of moments.</summary>
    public void Restart() => _before = null;

    /// <summary>Seconds from the start; null, and reported, when the moment cannot be placed.</summary>
    public double? Seconds(Moment moment)
    {
        if (moment.ElapsedS is { } elapsed) return elapsed;
        if (start is not { } zero)
        {
            problems.Add(moment.Line, moment.Column, $"'{moment.Text}' is a time of day, but neither the log nor 'start' says what time it was at the start; write 'start: 2026-03-14 09:00' or a time after the start such as '25 min'");
            return null;
        }
        if (moment.Clock is not { } clock)
        {
            problems.Add(moment.Line, moment.Column, $"'{moment.Text}' is a date without a time of day");
            return null;
        }
        double seconds;
        if (moment.Date is { } date) seconds = (date + clock - zero).TotalSeconds;
        else
        {
            seconds = (zero.Date + clock - zero).TotalSeconds;
            // Nearest to the start at first, then the next one after the moment before.
            var earliest = _before is { } before ? before - DisorderS : dateOnly ? 0 : -DayS / 2;
            seconds += DayS * Math.Ceiling((earliest - seconds) / DayS);
        }
        _before = Math.Max(_before ?? seconds, seconds);
        return seconds;
    }
}
