using Coldwright.Runs.Logs;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Repair;

/// <summary>
/// A long step forward is either a gap in the log or a clock that was set. While something changes steadily the readings tell them apart:
/// after a gap the change of all that time shows, after a set clock only that of one step.
/// </summary>
internal static class ClockJumpJudge
{
    private const int Samples = 12;
    // so long a piece of the course on either side: within a minute terminals that warm and cool look like a course. Our assumption.
    private const double LongestS = 600;
    // The change of the whole gap must stand far above the scatter to say anything, and a quarter of it is what a curved run may hide. Our assumptions.
    private const double LeastChangeOverScatter = 10;
    private const double ShareThatIsNone = 0.25;

    /// <summary>True when the readings say that the clock moved; false when they say that time passed, or nothing.</summary>
    /// <param name="log">The rows.</param>
    /// <param name="kept">Rows kept before the step.</param>
    /// <param name="times">Their times, s.</param>
    /// <param name="row">First row after the step.</param>
    /// <param name="jumpS">How far the time moved beyond one usual step, s.</param>
    /// <param name="stepS">Usual step, s.</param>
    public static bool IsClock(LogTable log, List<int> kept, List<double> times, int row, double jumpS, double stepS)
    {
        var informative = 0;
        foreach (var column in log.Columns)
        {
            if (Line(Before(column, kept, times)) is not { } a || Line(After(log, column, row)) is not { } b) continue;
            var slope = Math.Sign(a.Slope) == Math.Sign(b.Slope) ? Math.Min(Math.Abs(a.Slope), Math.Abs(b.Slope)) : 0;
            var scatter = Math.Max(Math.Max(a.Scatter, b.Scatter), Math.Pow(10, -column.Decimals));
            if (slope * jumpS < LeastChangeOverScatter * scatter) continue;
            informative++;
            // what one usual step changes is taken off
            if (Math.Abs(b.AtEdge - a.AtEdge - Math.Sign(a.Slope) * slope * stepS) > ShareThatIsNone * slope * jumpS) return false;
        }
        return informative > 0;
    }

    private static List<(double T, double Y)> Before(LogColumn column, List<int> kept, List<double> times)
    {
        var points = new List<(double, double)>();
        for (var k = kept.Count - 1; k >= 0 && (points.Count < Samples || times[^1] - times[k] < LongestS); k--)
            if (column.Flags[kept[k]] == SampleFlag.Good) points.Add((times[k] - times[^1], column.Values[kept[k]]));
        return points;
    }

    private static List<(double T, double Y)> After(LogTable log, LogColumn column, int row)
    {
        var points = new List<(double, double)>();
        for (var i = row; i < log.Times.Length && (points.Count < Samples && i < row + 4 * Samples || log.Times[i] - log.Times[row] < LongestS); i++)
            if (column.Flags[i] == SampleFlag.Good && !double.IsNaN(log.Times[i])) points.Add((log.Times[i] - log.Times[row], column.Values[i]));
        return points;
    }

    // A straight line through the points; its value at the edge of the step is the one at T = 0.
    private static (double Slope, double AtEdge, double Scatter)? Line(List<(double T, double Y)> p)
    {
        if (p.Count < Samples / 2) return null;
        double meanT = p.Average(q => q.T), meanY = p.Average(q => q.Y);
        var spread = p.Sum(q => (q.T - meanT) * (q.T - meanT));
        if (spread <= 0) return null;
        var slope = p.Sum(q => (q.T - meanT) * (q.Y - meanY)) / spread;
        var scatter = Math.Sqrt(p.Sum(q => Math.Pow(q.Y - meanY - slope * (q.T - meanT), 2)) / Math.Max(p.Count - 2, 1));
        return (slope, meanY - slope * meanT, scatter);
    }
}
