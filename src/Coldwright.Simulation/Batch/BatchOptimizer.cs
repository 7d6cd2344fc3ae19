using Coldwright.Numerics;

namespace Coldwright.Simulation.Batch;

/// <summary>
/// The schedule that collects most per hour, or at least electricity: feed pressure kept, share filled, opening pressure. A coarse grid over all three, then
/// the best of it moved by ever smaller steps in each direction until nothing is gained. Two runs at a time.
/// </summary>
internal sealed class BatchOptimizer
{
    private const double LowestFill = 0.15, HighestFill = 0.92, LowestOverRoom = 1.25;
    private static readonly double[] _feedShares = [0.55, 0.8, 1.0], _fills = [0.3, 0.6, HighestFill], _openings = [0.1, 0.3, 0.6, 1.0];

    private readonly BatchCooler _cooler;
    private readonly BatchOptions _options;
    private readonly CancellationToken _cancel;
    private readonly Action<string>? _observer;
    private readonly Dictionary<(double, double, double), BatchRun?> _known = [];

    public BatchOptimizer(BatchCooler cooler, BatchOptions options, Action<string>? observer, CancellationToken cancel) =>
        (_cooler, _options, _observer, _cancel) = (cooler, options with { RelativeTolerance = Math.Max(options.RelativeTolerance, 1e-5) }, observer, cancel);

    /// <summary>Schedules tried.</summary>
    public int Tried => _known.Count;

    /// <summary>True when it was cancelled: the best so far counts.</summary>
    public bool Stopped { get; private set; }

    /// <summary>The best schedule for a goal; null when none collects anything. What was tried for one goal serves the other.</summary>
    public BatchPlan? Best(BatchGoal goal)
    {
        Try(from feed in _feedShares from fill in _fills from opening in _openings select (feed, fill, opening));
        var best = Leader(goal);
        double step = 0.5;
        while (best is { } at && step > 0.06 && !Stopped)
        {
            // half of the way to the neighbour on the grid, in each direction
            Try([Move(at, 0, step * 0.25), Move(at, 0, -step * 0.25), Move(at, 1, step * 0.3), Move(at, 1, -step * 0.3), Move(at, 2, step * 0.4), Move(at, 2, -step * 0.4)]);
            var next = Leader(goal);
            if (next == best) step *= 0.5;
            best = next;
        }
        return best is { } found ? Plan(found) : null;
    }

    private static (double, double, double) Move((double Feed, double Fill, double Opening) at, int which, double by) => which switch
    {
        0 => (Math.Round(Math.Clamp(at.Feed + by, 0.3, 1), 4), at.Fill, at.Opening),
        1 => (at.Feed, Math.Round(Math.Clamp(at.Fill + by, LowestFill, HighestFill), 4), at.Opening),
        _ => (at.Feed, at.Fill, Math.Round(Math.Clamp(at.Opening + by, 0, 1), 4)),
    };

    private void Try(IEnumerable<(double, double, double)> points)
    {
        var asked = points.Distinct().Where(p => !_known.ContainsKey(p)).ToArray();
        for (int i = 0; i < asked.Length && !Stopped; i += 2)
        {
            var pair = asked.Skip(i).Take(2).ToArray();
            var other = pair.Length > 1 ? Task.Run(() => One(pair[1]), CancellationToken.None) : null;
            var first = One(pair[0]);
            var second = other?.GetAwaiter().GetResult();
            if (_cancel.IsCancellationRequested)
            {
                Stopped = true;
                return;
            }
            _known[pair[0]] = first;
            if (pair.Length > 1) _known[pair[1]] = second;
            _observer?.Invoke($"schedules tried: {_known.Count}");
        }
    }

    private BatchRun? One((double, double, double) point)
    {
        try
        {
            return new BatchRunner(_cooler, Plan(point), _options, keepSeries: false, _cancel).Run();
        }
        catch (SolveException)
        {
            // a schedule that cannot be followed is no candidate; the one shown in the end is run again and would say so
            return null;
        }
    }

    private (double, double, double)? Leader(BatchGoal goal)
    {
        var able = _known.Where(p => p.Value is { Grams.CollectedKg: > 1e-5 }).ToArray();
        if (able.Length == 0) return null;
        return goal == BatchGoal.LitresPerHour ? able.MaxBy(p => p.Value!.CollectedLPerH).Key : able.MinBy(p => p.Value!.EnergyKWhPerL ?? double.MaxValue).Key;
    }

    // pressures on a logarithmic scale between a little over the room's and the feed's
    private BatchPlan Plan((double Feed, double Fill, double Opening) p)
    {
        double low = LowestOverRoom * _cooler.RoomPa, feed = Math.Max(1.3 * low, _cooler.FeedPa * p.Feed);
        return new() { FeedPressurePa = feed, FillShare = p.Fill, OpeningPressurePa = low * Math.Pow(feed / low, p.Opening) };
    }
}
