using Coldwright.Machine.Layout;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Explain;

/// <summary>When the compressor started and stopped, s from the start of the record, and how well both are known, s (one standard deviation).</summary>
/// <param name="StartS">Start.</param>
/// <param name="StopS">Stop; null when the record ends before.</param>
/// <param name="StartDoubtS">Standard uncertainty of the start.</param>
/// <param name="StopDoubtS">Standard uncertainty of the stop.</param>
/// <param name="IsByLoad">True when nothing but the load shows the start.</param>
/// <param name="ClockS">How far the writer's watch is behind the logger's clock, s: what is to be added to the times of all notes.</param>
internal sealed record RunEdges(double StartS, double? StopS, double StartDoubtS, double StopDoubtS, bool IsByLoad, double ClockS)
{
    // Our assumptions. A running compressor parts its pressures by this ratio and draws this share of its usual power; a note by hand may be so many seconds off; the load moves so many kelvin before it counts;
    // a warm-up seen by the load alone goes this far, and is followed back to the stop from two levels above the coldest.
    private const double RunningRatio = 1.25, RestingRatio = 1.15, RunningShare = 0.3, NotedDoubtS = 60, OverruleS = 100, OverruleSteps = 1.5, MostOverruleS = 1800, LoadMovedK = 2, LoadDoubtS = 300, ColdK = 8, MostBackS = 7200, SlopeS = 600, LeastUnderWayS = 900, UnderWayShare = 0.5, LeastWarmUpK = 10, StopNotedDoubtS = 20, StopSeenDoubtS = 60, LowerRiseK = 3, UpperRiseK = 8;

    /// <summary>The edges of a record: from its events, checked against pressures and compressor's electricity, or from these and the load where nobody noted them.</summary>
    /// <param name="record">The record.</param>
    /// <param name="layout">The machine's layout.</param>
    /// <param name="channels">Channels that show the machine.</param>
    /// <param name="said">Collects what a person must be told.</param>
    /// <param name="wayDown">Time that the model's load takes to a temperature (K), s, for a start that nothing shows but the load; null: by the slope of the load.</param>
    public static RunEdges Find(RunRecord record, LoopLayout layout, IReadOnlyList<ObservedChannel> channels, List<string> said, Func<double, double?>? wayDown = null)
    {
        bool Concerns(RunEvent e) => e.At.Length == 0 || e.At == layout.Compressor.Name || e.At == Whereabouts.Machine;
        double? noted = record.Events.FirstOrDefault(e => e.Kind == EventKind.Start && Concerns(e))?.TimeS;
        double? notedStop = record.Events.FirstOrDefault(e => e.Kind == EventKind.Stop && Concerns(e) && e.TimeS > (noted ?? double.NegativeInfinity))?.TimeS;
        var shown = Shown(channels, c => c.What == Observable.CompressorPower) ?? Shown(channels, _ => false);
        // the electricity of everything tells of the compressor only where nothing better does, and not against a note
        var weak = shown ?? Shown(channels, c => c.What == Observable.Power);
        var load = channels.First(c => c.What == Observable.Load);
        var (start, doubt) = noted is { } n ? (Checked(n, shown?.Start, shown?.StepS ?? 0, "start", said), Math.Max(NotedDoubtS, 0.3 * load.StepS))
            : weak?.Start is { } s ? (Guess(s, "start", said), Math.Max(NotedDoubtS, weak.Value.StepS)) : FromLoad(load.Channel, record.RoomTemperatureK, weak is not null, wayDown, said);
        // the warm-up itself shows a stop, where neither pressures nor electricity do
        double? shownStop = notedStop is null ? null : shown?.Stop ?? WarmUpFrom(load.Channel, Math.Max(start, load.Channel.TimesS[0]));
        double clock = Clock(Apart(noted, shown?.Start, shown?.StepS ?? 0), Apart(notedStop, shownStop, shown?.StepS ?? load.StepS));
        if (clock != 0) said.Add(FormattableString.Invariant($"the notes' watch and the logger's clock differ by {Math.Abs(clock) / 60:0} min; all notes were moved by as much"));
        bool byLoad = noted is null && weak?.Start is null;
        if (notedStop is { } stop) return new RunEdges(start, Checked(stop, shownStop, shown?.StepS ?? load.StepS, "stop", said), doubt, StopDoubt(stop, shownStop, load.StepS), byLoad, clock);
        double? seen = weak?.Stop is { } w && w > start ? w : weak is null ? WarmUpFrom(load.Channel, start) : null;
        return new RunEdges(start, seen is { } at ? Guess(at, "stop", said) : null, doubt, weak is { } by ? Math.Max(StopNotedDoubtS, 0.5 * by.StepS) : Math.Max(StopSeenDoubtS, load.StepS), byLoad, clock);
    }

    private static double Guess(double at, string what, List<string> said)
    {
        said.Add(FormattableString.Invariant($"no event says when the compressor's {what} was; the log shows it {at / 60:0} min after its first row"));
        return at;
    }

    // how far the log shows an edge after its note; null where one of the two is missing, 0 where they agree or mean different edges
    private static double? Apart(double? noted, double? shown, double stepS) => shown - noted is { } by ? Math.Abs(by) < Math.Max(OverruleS, OverruleSteps * stepS) || Math.Abs(by) > MostOverruleS ? 0 : by : null;

    // a stop that the log contradicts is good for nothing
    private static double StopDoubt(double noted, double? shown, double stepS) => Math.Max(shown is null ? StopSeenDoubtS : StopNotedDoubtS, Math.Max(0.3 * stepS, shown - noted is { } by && Math.Abs(by) > MostOverruleS ? Math.Abs(by) : 0));

    // start and stop noted as late as one another, or one of them alone: two clocks
    private static double Clock(double? start, double? stop) => (start, stop) switch
    {
        ({ } a, { } b) => Math.Abs(a - b) < OverruleS && a != 0 && b != 0 ? 0.5 * (a + b) : 0,
        _ => start ?? stop ?? 0,
    };

    private static double Checked(double noted, double? shown, double stepS, string what, List<string> said)
    {
        // what lies farther off is another start, or start and stop exchanged
        if (shown is not { } at || Math.Abs(at - noted) < Math.Max(OverruleS, OverruleSteps * stepS) || Math.Abs(at - noted) > MostOverruleS) return noted;
        said.Add(FormattableString.Invariant($"the compressor's {what} was noted {Math.Abs(noted - at) / 60:0} min {(noted > at ? "after" : "before")} the log shows it; the log is taken"));
        return at;
    }

    // first and last moment at which it ran, by one channel, or by the two pressures
    private static (double? Start, double? Stop, double StepS)? Shown(IReadOnlyList<ObservedChannel> channels, Func<ObservedChannel, bool> power)
    {
        if (channels.FirstOrDefault(power) is { } meter)
        {
            double usual = Usual(meter.Channel);
            return usual <= 0 ? null : Edges(meter.Channel, meter.StepS, (v, _) => v > RunningShare * usual, (v, _) => v <= RunningShare * usual);
        }
        var high = channels.FirstOrDefault(c => c.What == Observable.HighPressure);
        var low = channels.FirstOrDefault(c => c.What == Observable.LowPressure);
        if (high is null || low is null) return null;
        double Ratio(double v, double t) => low.Channel.LastGood(t + 1) is { Value: > 0 } l ? v / l.Value : 1;
        return Edges(high.Channel, Math.Max(high.StepS, low.StepS), (v, t) => Ratio(v, t) > RunningRatio, (v, t) => Ratio(v, t) < RestingRatio);
    }

    private static double Usual(RunChannel c)
    {
        double[] good = [.. Enumerable.Range(0, c.Count).Where(i => c.Flags[i] == SampleFlag.Good).Select(i => c.Values[i]).Order()];
        return good.Length == 0 ? 0 : good[(int)(0.9 * (good.Length - 1))];
    }

    // a start needs a moment of rest before it, a stop rest until the record's end
    private static (double? Start, double? Stop, double StepS) Edges(RunChannel c, double stepS, Func<double, double, bool> runs, Func<double, double, bool> rests)
    {
        double? rest = null, start = null, last = null, still = null;
        for (int i = 0; i < c.Count; i++)
        {
            if (c.Flags[i] != SampleFlag.Good) continue;
            double t = c.TimesS[i], v = c.Values[i];
            if (runs(v, t))
            {
                if (start is null && last is null && rest is { } r) start = 0.5 * (r + t);
                (last, still) = (t, null);
            }
            else if (rests(v, t))
            {
                rest = t;
                still ??= t;
            }
        }
        return (start, last is { } end && still is { } from ? 0.5 * (end + Math.Min(from, end + 2 * stepS)) : null, stepS);
    }

    // By the load alone: from when it falls, or, where it is cold already or the compressor runs from the first row, from before that: as long as the model takes, or back along its slope to the room.
    private static (double, double) FromLoad(RunChannel load, double roomK, bool isUnderWay, Func<double, double?>? wayDown, List<string> said)
    {
        int[] good = [.. Enumerable.Range(0, load.Count).Where(i => load.Flags[i] == SampleFlag.Good)];
        double first = load.TimesS[good[0]], warm = load.Values[good[0]];
        if (isUnderWay || warm < roomK - ColdK)
        {
            int later = good.FirstOrDefault(i => load.TimesS[i] > first + SlopeS, good[^1]);
            double slope = (warm - load.Values[later]) / Math.Max(load.TimesS[later] - first, 1), back = wayDown?.Invoke(warm) ?? Math.Clamp(slope > 1e-6 ? (roomK - warm) / slope : MostBackS, 0, MostBackS);
            said.Add(FormattableString.Invariant($"the log begins with the compressor running (the vessel {roomK - warm:0} K below the room) and no event says when it started: perhaps {back / 60:0} min before, so times say little"));
            return (first - back - 1, Math.Max(LeastUnderWayS, UnderWayShare * back));
        }
        int moved = good.FirstOrDefault(i => load.Values[i] < warm - LoadMovedK, good[0]);
        double before = wayDown?.Invoke(warm - LoadMovedK) ?? LoadDoubtS;
        said.Add("no event says when the compressor started, and neither pressures nor electricity show it; it is taken from when the vessel begins to cool");
        return (load.TimesS[moved] - before, Math.Max(LoadDoubtS, UnderWayShare * before));
    }

    // The load rises to the end of the record. Its coldest reading may lie long before the stop, on a plateau that hardly moves: the rise itself is drawn back to that level.
    private static double? WarmUpFrom(RunChannel load, double startS)
    {
        int[] good = [.. Enumerable.Range(0, load.Count).Where(i => load.Flags[i] == SampleFlag.Good && load.TimesS[i] > startS)];
        if (good.Length < 3) return null;
        int at = good.Length - 1;
        double lowest = load.Values[good[at]];
        while (at > 0 && load.Values[good[at - 1]] < lowest + 1)
        {
            at--;
            lowest = Math.Min(lowest, load.Values[good[at]]);
        }
        if (load.Values[good[^1]] - lowest <= LeastWarmUpK) return null;
        double Left(double rise) => load.TimesS[good[at..].Last(i => load.Values[i] <= lowest + rise)];
        double lower = Left(LowerRiseK), coldest = load.TimesS[good[at..].MinBy(i => load.Values[i])];
        return Math.Max(coldest, lower - (Left(UpperRiseK) - lower) * LowerRiseK / (UpperRiseK - LowerRiseK));
    }
}
