using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;

namespace Coldwright.Runs.Explain;

/// <summary>Reads a record as a run of its machine.</summary>
internal static class Observer
{
    private const int MostPoints = 3000;
    // of the room's temperature by a thermometer of the record, as noted by hand (few rooms stay as they were), and where nobody noted it, one standard deviation; our assumptions
    private const double RoomSeenK = 1, RoomNotedK = 2.5, RoomGuessedK = 5;
    // a start is noted to the minute, and one side falls at once; our assumption
    private const double ClearlyBeforeS = 90, LongestRestS = 3600;
    private const double SettledKPerS = 2.0 / 3600, LeastPullDownS = 900, MostRiseK = 5;

    /// <summary>The observation.</summary>
    /// <exception cref="SolveException">The record holds nothing that can be explained; the advice says what is missing.</exception>
    /// <param name="record">The record.</param>
    /// <param name="layout">The machine's layout.</param>
    /// <param name="wayDown">Time that the model's load takes to a temperature (K), s; null: not asked.</param>
    public static Observation Read(RunRecord record, LoopLayout layout, Func<double, double?>? wayDown = null)
    {
        var said = new List<string>();
        var channels = Channels(record, layout, said);
        if (channels.All(c => c.What != Observable.Load)) throw No("no good channel shows the temperature of the vessel or block; it is what the explanation hangs on");
        var load = channels.First(c => c.What == Observable.Load);
        var (start, stop, startDoubt, stopDoubt, byLoad, clock) = RunEdges.Find(record, layout, channels, said, wayDown);
        if (clock != 0) record = record with { Events = [.. record.Events.Select(e => e with { TimeS = e.TimeS + clock })] };
        double? feedOn = record.Events.FirstOrDefault(e => e.Kind == EventKind.FeedOn && e.TimeS > start)?.TimeS;
        double end = Math.Min(feedOn ?? double.PositiveInfinity, Math.Min(stop ?? double.PositiveInfinity, LastGood(load)));
        if (end - start < LeastPullDownS) throw No(FormattableString.Invariant($"between the start of {layout.Compressor.Name} and the first feed or its stop lie {Math.Max(0, end - start) / 60:0} min of the vessel's temperature; {LeastPullDownS / 60:0} min are the least"));
        var lines = channels.ToDictionary(c => c.What, c => Line(c, start));
        double rise = lines[Observable.Load].At(end - start) - lines[Observable.Load].At(0);
        if (rise > MostRiseK) throw No(FormattableString.Invariant($"the vessel warmed by {rise:0} K between the start of {layout.Compressor.Name} and the end of its pull-down ({(end - start) / 60:0} min later): events and log contradict one another, or start and stop are exchanged"));
        var (room, roomDoubt) = Room(record, start);
        var trace = new Trace
        {
            Lines = lines, EndS = end - start, StopS = stop is { } s ? s - start : null, LastS = LastGood(load) - start, RoomK = room, RestPa = Rest(channels, start), Batch = BatchObserver.Read(record, layout, start),
        };
        if (trace.Batch is { } batch) Unseen(batch, said);
        return new Observation { Trace = trace, Channels = channels, StartS = start, StartDoubtS = startDoubt, StopDoubtS = stopDoubt, IsStartByLoad = byLoad, RoomDoubtK = roomDoubt, Phases = Phases(record, layout, trace, start), Said = said };
    }

    private static void Unseen(BatchTrace batch, List<string> said)
    {
        if (batch.CollectedKg is null) said.Add("the flask was not weighed after the discharge, so faults of the batch (drain line, valve, flask, feed) cannot be seen in what it holds");
        else if (batch.FedKg is null) said.Add("what was fed was not weighed, so a loss of product cannot be told from a machine that makes less of it");
    }

    private static SolveException No(string advice) => new(new SolveReport(SolveStatus.Outside, 0, 0, advice));

    private static IReadOnlyList<ObservedChannel> Channels(RunRecord record, LoopLayout layout, List<string> said)
    {
        var found = new Dictionary<Observable, ObservedChannel>();
        foreach (var c in record.Channels)
        {
            if (c.GoodCount < 3 || PlaceReader.Of(c, layout) is not { } what) continue;
            double step = (c.TimesS[^1] - c.TimesS[0]) / Math.Max(1, c.GoodCount - 1);
            var one = new ObservedChannel(what, c, step);
            // of two that show the same, the better one
            if (!found.TryGetValue(what, out var other) || one.CommonAt(c.Lowest) < other.CommonAt(c.Lowest)) found[what] = one;
            if (other is not null) said.Add($"{c.Name} and {other.Channel.Name} show the same; {found[what].Channel.Name} is used");
        }
        return [.. found.Values.OrderBy(c => c.What)];
    }

    private static double LastGood(ObservedChannel c)
    {
        for (int i = c.Channel.Count - 1; i >= 0; i--) if (c.Channel.Flags[i] == SampleFlag.Good) return c.Channel.TimesS[i];
        return 0;
    }

    // blocks of samples, each by its mean: a day at 1 Hz is thinned without losing its course
    private static TraceLine Line(ObservedChannel c, double start)
    {
        ReadOnlySpan<double> times = c.Channel.TimesS, values = c.Channel.Values;
        var flags = c.Channel.Flags;
        int block = Math.Max(1, c.Channel.GoodCount / MostPoints), n = 0;
        double t = 0, v = 0;
        var (ts, vs) = (new List<double>(), new List<double>());
        for (int i = 0; i < values.Length; i++)
        {
            if (flags[i] != SampleFlag.Good) continue;
            (t, v) = (t + times[i], v + values[i]);
            if (++n < block) continue;
            if (ts.Count == 0 || t / n - start > ts[^1])
            {
                ts.Add(t / n - start);
                vs.Add(v / n);
            }
            (t, v, n) = (0, 0, 0);
        }
        return new TraceLine([.. ts], [.. vs]);
    }

    private static (double RoomK, double DoubtK) Room(RunRecord record, double start)
    {
        var rooms = record.Channels.Where(c => c.Place.Port == Whereabouts.Room && c.Measured == Measured.Temperature && c.GoodCount > 0).ToArray();
        return rooms.Length > 0 && rooms[0].LastGood(start + 600) is { } v ? (v.Value, RoomSeenK) : (record.RoomTemperatureK, record.IsRoomNoted ? RoomNotedK : RoomGuessedK);
    }

    private static double? Rest(IReadOnlyList<ObservedChannel> channels, double start)
    {
        foreach (var what in new[] { Observable.HighPressure, Observable.LowPressure })
            if (channels.FirstOrDefault(c => c.What == what) is { } c && Line(c, start).Middle(-LongestRestS, -ClearlyBeforeS) is { } v) return v;
        return null;
    }

    private static IReadOnlyList<RunPhase> Phases(RunRecord record, LoopLayout layout, Trace t, double start)
    {
        var list = new List<RunPhase>();
        if (record.FirstS < start - 1) list.Add(new("rest", record.FirstS, start));
        var load = t.Lines[Observable.Load];
        // plateau: from where the load no longer falls by two kelvin an hour
        double settled = t.EndS;
        while (settled > 600 && (load.Mean(settled - 600, settled - 300) - load.Mean(t.EndS - 300, t.EndS)) / Math.Max(300, t.EndS - settled) < SettledKPerS && load.At(settled - 600) - load.At(t.EndS) < 1.5) settled -= 120;
        list.Add(new("pull-down", start, start + settled));
        if (t.EndS - settled > 300) list.Add(new("plateau", start + settled, start + t.EndS));
        double? from = null, feedOff = null, open = null;
        foreach (var e in record.Events.Where(e => e.TimeS > start))
        {
            if (e.Kind == EventKind.FeedOn) from = e.TimeS;
            if (e.Kind == EventKind.FeedOff && from is { } f) { list.Add(new("feeding", f, e.TimeS)); (feedOff, from) = (e.TimeS, null); }
            if (e.Kind == EventKind.ValveOpen && feedOff is { } off) { list.Add(new("condensing", off, e.TimeS)); (open, feedOff) = (e.TimeS, null); }
            if (e.Kind == EventKind.ValveShut && open is { } o) { list.Add(new("discharge", o, e.TimeS)); open = null; }
        }
        if (t.StopS is { } stop && t.LastS - stop > 60) list.Add(new("warm-up", start + stop, start + t.LastS));
        return list;
    }
}
