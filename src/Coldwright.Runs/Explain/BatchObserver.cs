using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;
using Coldwright.Runs.Tightness;

namespace Coldwright.Runs.Explain;

/// <summary>What events and channels say of one batch: the first feeding and the discharge after it.</summary>
internal static class BatchObserver
{
    // Notes are good to minutes: the drain was open when the vessel's pressure fell to so much of what it was, within so long of the note; without that pressure what was read so long before counts. Our assumptions.
    private const double NotedWithinS = 600, FallenShare = 0.6, FallS = 60, BeforeS = 120, StepBeforeS = 20;
    // an empty flask loses nothing
    private const double LeastLeftKg = 0.01, ClearlyMoreKg = 0.02;

    /// <summary>The batch; null when nothing was fed.</summary>
    public static BatchTrace? Read(RunRecord record, LoopLayout layout, double startS)
    {
        if (layout.Vessel is not { } vessel || layout.Feed is not { } feed) return null;
        var events = record.Events.Where(e => e.TimeS > startS).ToArray();
        if (events.FirstOrDefault(e => e.Kind == EventKind.FeedOn) is not { } on || events.FirstOrDefault(e => e.Kind == EventKind.FeedOff && e.TimeS > on.TimeS) is not { } off) return null;
        double until = events.FirstOrDefault(e => e.Kind == EventKind.FeedOn && e.TimeS > off.TimeS)?.TimeS ?? double.PositiveInfinity;
        var open = events.FirstOrDefault(e => e.Kind == EventKind.ValveOpen && e.TimeS >= off.TimeS && e.TimeS < until);
        string flask = layout.Flask?.Name ?? "";
        var weighed = events.Where(e => e.Kind == EventKind.Weighed && e.At == flask && e.MassKg is not null && e.TimeS < until).ToArray();
        var after = weighed.Where(e => open is not null && e.TimeS > open.TimeS).ToArray();
        var temperature = record.Channels.FirstOrDefault(c => c.GoodCount > 0 && c.Measured == Measured.Temperature && c.Place.Part == vessel.Name);
        var pressure = record.Channels.FirstOrDefault(c => c.GoodCount > 0 && c.Measured == Measured.Pressure && c.Place.Part == vessel.Name);
        double? fed = Fed(record, feed.Name, on.TimeS, off.TimeS) ?? FromReceiver(record, feed, on.TimeS, off.TimeS), collected = after.Length > 0 ? after[0].MassKg : null;
        // a bottle that lost less than the flask holds was read by another clock than the notes
        if (fed + ClearlyMoreKg < collected) fed = null;
        double? before = open is null ? null : pressure is not null ? Opened(pressure, Math.Max(off.TimeS, open.TimeS - NotedWithinS), open.TimeS) : Math.Max(off.TimeS, open.TimeS - BeforeS);
        return new BatchTrace
        {
            FeedS = off.TimeS - on.TimeS,
            WaitS = open?.TimeS - off.TimeS,
            FedKg = fed,
            CollectedKg = collected,
            OpeningK = before is { } at ? temperature?.LastGood(at)?.Value : null,
            OpeningAgeS = before is { } then && temperature?.LastGood(then) is { } old ? old.AgeS : 0,
            OpeningPa = before is { } moment ? pressure?.LastGood(moment)?.Value : null,
            FeedPa = pressure is null ? null : Highest(pressure, on.TimeS, off.TimeS),
            BoilOffKgPerS = after.Length > 1 && after[^1].MassKg > LeastLeftKg && after[^1].TimeS - after[0].TimeS > 600 ? (after[0].MassKg - after[^1].MassKg) / (after[^1].TimeS - after[0].TimeS) : null,
            SeepKgPerS = open is not null && pressure is not null ? Seep(record, feed.Name, off.TimeS, open.TimeS) : null,
        };
    }

    // a balance under the bottle, or a flow meter in its line
    private static double? Fed(RunRecord record, string feed, double from, double to)
    {
        if (record.Channels.FirstOrDefault(c => c.Measured == Measured.Mass && c.Place.Part == feed && c.GoodCount > 1) is { } balance && balance.LastGood(from) is { } a && balance.LastGood(to + 30) is { } b) return Math.Max(0, a.Value - b.Value);
        if (record.Channels.FirstOrDefault(c => c.Measured == Measured.MassFlow && c.Place.Part == feed && c.GoodCount > 1) is not { } meter) return null;
        double sum = 0;
        for (int i = 1; i < meter.Count; i++)
            if (meter.TimesS[i] > from && meter.TimesS[i] <= to && meter.Flags[i] == SampleFlag.Good) sum += meter.Values[i] * (meter.TimesS[i] - meter.TimesS[i - 1]);
        return sum;
    }

    /// <summary>Gas taken from a receiver by the fall of its pressure, at the room's temperature and with the real gas, kg; null without one or without its pressure.</summary>
    public static double? FromReceiver(RunRecord record, FeedPart feed, double from, double to)
    {
        if (feed.Receiver is not { } receiver || record.Channels.FirstOrDefault(c => c.Measured == Measured.Pressure && c.Place.Part == feed.Name && c.GoodCount > 1) is not { } gauge) return null;
        if (gauge.LastGood(from) is not { } before || gauge.LastGood(to + 30) is not { } after) return null;
        var gas = new GasDensity(new Composition([feed.Gas], [1.0]));
        return gas.At(record.RoomTemperatureK, before.Value) is { } a && gas.At(record.RoomTemperatureK, after.Value) is { } b ? Math.Max(0, receiver.VolumeM3 * (a - b) * gas.MolarMass) : null;
    }

    // the moment before the pressure falls within a minute to a share of what it was; the note where it does not
    private static double Opened(RunChannel pressure, double from, double noted)
    {
        int before = -1;
        for (int i = 0; i < pressure.Count && pressure.TimesS[i] < noted + NotedWithinS; i++)
        {
            if (pressure.Flags[i] != SampleFlag.Good || pressure.TimesS[i] < from) continue;
            if (before < 0) before = i;
            while (before + 1 < i && pressure.TimesS[before + 1] <= pressure.TimesS[i] - FallS) before++;
            if (pressure.Flags[before] == SampleFlag.Good && pressure.Values[i] < FallenShare * pressure.Values[before]) return pressure.TimesS[before];
        }
        return noted - StepBeforeS;
    }

    private static double Highest(RunChannel c, double from, double to)
    {
        double most = 0;
        for (int i = 0; i < c.Count; i++) if (c.Flags[i] == SampleFlag.Good && c.TimesS[i] >= from && c.TimesS[i] <= to) most = Math.Max(most, c.Values[i]);
        return most;
    }

    // gas that the vessel still draws while the feed compressor or regulator should have shut
    private static double? Seep(RunRecord record, string feed, double from, double to) => to - from > 300 && Fed(record, feed, from + 60, to) is { } kg ? kg / (to - from - 60) : null;
}
