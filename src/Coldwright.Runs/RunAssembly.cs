using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Quantities;
using Coldwright.Runs.Files;
using Coldwright.Runs.Logs;
using Coldwright.Runs.Record;
using Coldwright.Runs.Repair;
using Coldwright.Runs.Sensors;

namespace Coldwright.Runs;

/// <summary>Puts a run's record together from its description and its log.</summary>
internal sealed class RunAssembly(RunDescription run, MachineDescription? machine, string directory, ProblemList problems, List<string> warnings)
{
    private static readonly DateTime _year2000 = new(2000, 1, 1);
    private readonly List<Fault> _faults = [];

    /// <summary>The record; null when problems were found.</summary>
    public RunRecord? Build(byte[]? logBytes, CancellationToken cancel)
    {
        LogTable? table = null;
        RowTimes? rows = null;
        if (run.Log is { } log && logBytes is not null)
        {
            var columns = run.Channels.Where(c => c.Column.Length > 0).Select(c => (c.Column, c.Sensor.UnitWord)).ToArray();
            table = LogReader.Read(logBytes, log, columns, out var complaints, cancel);
            foreach (var complaint in complaints) problems.Add($"{log.File}: {complaint}");
            if (table is null) return null;
            rows = RowTimesBuilder.Build(table, log.ForwardJumps);
            if (rows.Rows.Length == 0)
            {
                problems.Add($"{log.File}: there is no row whose time can be read");
                return null;
            }
            warnings.AddRange(table.Notes);
            _faults.AddRange(rows.Faults);
            RowFaults(table);
        }
        var start = StartOf(table, rows);
        var resolver = new MomentResolver(start ?? (table is null ? _year2000 : null), table is null && run.Start?.Clock is null, problems);
        var hand = HandTimes(resolver);
        var events = Events(resolver);
        var test = Test(resolver);
        if (!problems.IsEmpty) return null;

        // Without a log the first note is time zero.
        var zero = table is null && start is null or { TimeOfDay.Ticks: 0 } ? hand.Select(h => h.TimeS).Concat(events.Select(e => e.TimeS)).DefaultIfEmpty(0).Min() : 0;
        if (zero != 0)
        {
            (start, hand) = (start?.AddSeconds(zero), [.. hand.Select(h => h with { TimeS = h.TimeS - zero })]);
            events = [.. events.Select(e => e with { TimeS = e.TimeS - zero })];
            test = test is null ? null : test with { FromS = test.FromS - zero, ToS = test.ToS - zero };
        }
        var (roomPa, roomUncertainty) = RunImporter.Room(run, machine, warnings);
        var channels = Channels(table, rows, hand, roomPa, roomUncertainty, cancel);
        if (!problems.IsEmpty) return null;
        foreach (var channel in channels.Where(c => c.GoodCount == 0)) warnings.Add($"channel '{channel.Name}' has no sample that can be used");
        return new RunRecord
        {
            Name = run.Name,
            Directory = directory,
            Kind = run.Kind,
            Start = start,
            RoomPressurePa = roomPa,
            RoomPressureUncertaintyPa = roomUncertainty,
            RoomTemperatureK = run.RoomTemperatureK ?? machine?.Room.TemperatureK ?? 293.15,
            IsRoomNoted = run.RoomTemperatureK is not null,
            Channels = channels,
            Events = [.. events.OrderBy(e => e.TimeS)],
            Faults = [.. _faults.OrderBy(f => f.FromS).ThenBy(f => f.Channel, StringComparer.Ordinal)],
            Warnings = [.. warnings.Distinct()],
            Log = table is null ? null : Summary(table, rows!, logBytes!.LongLength),
            Machine = machine,
            Test = test,
        };
    }

    private void RowFaults(LogTable table)
    {
        if (table.OddRows.Count > 0) _faults.Add(new(FaultKind.OddRow, "", 0, 0, table.OddRows.Count, table.OddRows.FirstLine, $"{table.OddRows.Count} lines among the data hold none (remarks, a heading written again); they were left out"));
        if (table.ShortRows.Count > 0) _faults.Add(new(FaultKind.OddRow, "", 0, 0, table.ShortRows.Count, table.ShortRows.FirstLine, $"{table.ShortRows.Count} rows end before their last column; what they hold was used"));
        if (table.CutLine > 0) _faults.Add(new(FaultKind.OddRow, "", 0, 0, 1, table.CutLine, "the last row is cut off; it was left out"));
    }

    private DateTime? StartOf(LogTable? table, RowTimes? rows)
    {
        var given = run.Start is { Date: { } date } moment ? date + (moment.Clock ?? TimeSpan.Zero) : (DateTime?)null;
        if (table is null || rows is null)
        {
            // Without a log the notes themselves may carry the date.
            var moments = run.Readings.Select(r => r.Time).Concat(run.Events.Select(e => e.Time)).ToArray();
            return given ?? moments.Where(m => m is { Date: not null, Clock: not null }).Select(m => (DateTime?)(m.Date + m.Clock)).Min() ?? (moments.Any(m => m.Clock is not null) ? _year2000 : null);
        }
        var ahead = run.Log!.ClockAheadS;
        var first = rows.FirstStamp - ahead;
        if (table.Time.HasDate)
        {
            // Times with an offset were brought to universal time; the notes are local.
            var local = double.IsNaN(table.OffsetS) ? 0 : table.OffsetS;
            return Math.Abs(first + local) < 6e9 ? _year2000.AddSeconds(first + local) : given;
        }
        if (table.Time.Form == TimeForm.Clock) return (given?.Date ?? _year2000).AddSeconds(first);
        return run.Start?.Clock is null ? null : given;
    }

    private List<HandTime> HandTimes(MomentResolver resolver)
    {
        resolver.Restart();
        var list = new List<HandTime>();
        foreach (var reading in run.Readings)
            if (resolver.Seconds(reading.Time) is { } t) list.Add(new(t, reading));
        return list;
    }

    private List<RunEvent> Events(MomentResolver resolver)
    {
        resolver.Restart();
        var events = new List<RunEvent>();
        foreach (var e in run.Events)
            if (resolver.Seconds(e.Time) is { } t) events.Add(new(t, e.Kind, e.At, e.MassKg, e.UncertaintyKg, e.Note, e.Line));
        return events;
    }

    private Tightness.TightnessDescription? Test(MomentResolver resolver)
    {
        if (run.Test is not { } test) return null;
        resolver.Restart();
        return test.Test with { FromS = test.From is null ? null : resolver.Seconds(test.From), ToS = test.To is null ? null : resolver.Seconds(test.To) };
    }

    private List<RunChannel> Channels(LogTable? table, RowTimes? rows, List<HandTime> hand, double roomPa, double roomUncertainty, CancellationToken cancel)
    {
        var axis = rows is null ? null : new TimeAxis(rows.TimesS);
        var built = new Dictionary<string, RunChannel>(StringComparer.Ordinal);
        // Barometers and cold junctions come first: others are counted from them.
        foreach (var c in run.Channels.OrderBy(c => c.Sensor.Kind.Element == SensorElement.Barometer ? 0 : c.Sensor.ColdJunctionChannel is null ? 1 : 2))
        {
            cancel.ThrowIfCancellationRequested();
            var (description, raw) = c.Column.Length > 0 && table is not null ? (c, FromLog(table, rows!, axis!, c)) : HandRaw.Build(c, [.. hand.Where(h => h.Reading.Channel == c.Name)], roomPa, problems);
            if (raw is null) continue;
            var barometer = built.Values.FirstOrDefault(b => b.Sensor.Kind.Element == SensorElement.Barometer && b.GoodCount > 0);
            var junction = c.Sensor.ColdJunctionChannel is { } name ? built.GetValueOrDefault(name) : null;
            var fixedK = c.Sensor.ColdJunctionK ?? run.RoomTemperatureK ?? machine?.Room.TemperatureK ?? 293.15;
            var around = new ChannelBuilder.Surroundings(
                barometer is null ? _ => roomPa : i => At(barometer, raw.Axis, i),
                junction is null ? _ => fixedK : i => At(junction, raw.Axis, i),
                junction is { GoodCount: > 0 } ? (junction.Lowest + junction.Highest) / 2 : fixedK,
                barometer is null ? roomUncertainty : SensorUncertainty.Combine(barometer.AtHighest));
            if (junction is { GoodCount: > 0 } && description.Sensor.ColdJunctionUncertaintyK is null)
                description = description with { Sensor = description.Sensor with { ColdJunctionUncertaintyK = SensorUncertainty.Combine(junction.AtHighest.Where(p => p.IsCommon)) } };
            built[c.Name] = ChannelBuilder.Build(description, raw, around, _faults);
        }
        return [.. run.Channels.Where(c => built.ContainsKey(c.Name)).Select(c => built[c.Name])];
    }

    // Channels of one log share their samples; others are read off at the time.
    private static double At(RunChannel channel, TimeAxis axis, int sample) => ReferenceEquals(channel.Axis, axis)
        ? channel.Values[sample]
        : channel.LastGood(axis.TimesS[sample])?.Value ?? channel.Values[channel.LowestIndex];

    private static ChannelBuilder.Raw FromLog(LogTable table, RowTimes rows, TimeAxis axis, ChannelDescription channel)
    {
        var index = table.Shape.Find(channel.Column);
        var column = table.Column(index);
        var (values, flags) = (new double[rows.Rows.Length], new SampleFlag[rows.Rows.Length]);
        for (var i = 0; i < values.Length; i++) (values[i], flags[i]) = (column.Values[rows.Rows[i]], column.Flags[rows.Rows[i]]);
        return new(axis, values, flags, Math.Pow(10, -Math.Min(column.Decimals, 15)), table.Shape.NameOf(index), true, i => table.Lines[rows.Rows[i]]);
    }

    private LogSummary Summary(LogTable table, RowTimes rows, long bytes)
    {
        var used = table.Columns.Select(c => c.Index).Append(table.Time.Column).Append(table.Time.DateColumn).ToHashSet();
        return new(run.Log!.File, bytes, rows.Rows.Length, table.Shape.Columns, table.Shape.DelimiterWord, table.Shape.DecimalComma ? "comma" : "point", table.Time.Words, rows.StepS,
            [.. Enumerable.Range(0, table.Shape.Columns).Where(c => !used.Contains(c)).Select(table.Shape.NameOf)]);
    }
}
