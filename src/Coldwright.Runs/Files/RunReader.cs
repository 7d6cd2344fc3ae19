using Coldwright.Fluids.Substances;
using Coldwright.Machine.Files;
using Coldwright.Machine.Files.Tree;
using Coldwright.Runs.Record;
using Coldwright.Runs.Tightness;

namespace Coldwright.Runs.Files;

/// <summary>Turns the tree of <c>run.yaml</c> into a description, reporting every problem on the way.</summary>
internal static class RunReader
{
    private const int MostReadings = 20000;
    private const double EmptyDoubts = 3;

    /// <summary>The description; null when the file holds no group of keys. With problems it is good for looking on, not for use.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="context">Where problems go; the room pressure is that of the machine.</param>
    /// <param name="charge">Mixture of the machine; null when it is not known.</param>
    public static RunDescription? Read(string text, ReadingContext context, Composition? charge)
    {
        var problems = context.Problems;
        if (FileTree.Read(text, problems) is not { } node) return null;
        if (node is not MapNode map)
        {
            problems.Add(node, $"the file must be a group of keys (name, channels, …); here is {node.What}");
            return null;
        }
        var root = new SectionReader(context, map, RunKeys.Root, "the file");
        var room = root.Section("room", "the room");
        var roomPressure = room?.OptionalQuantity("pressure");
        if (roomPressure is { } p && !double.IsNaN(p)) root = root.With(root.Context with { RoomPressurePa = p });
        var kind = root.Choice("kind") switch
        {
            "leak-test" => RunKind.LeakTest,
            "proof-test" => RunKind.ProofTest,
            _ => RunKind.Run,
        };
        var channels = Channels(root);
        var description = new RunDescription
        {
            Name = root.Text("name"),
            Kind = kind,
            Start = Moment(root, "start"),
            Cooler = root.Text("cooler"),
            RoomTemperatureK = room?.OptionalQuantity("temperature"),
            RoomPressurePa = roomPressure,
            RoomPressureUncertaintyPa = room?.OptionalQuantity("pressure-uncertainty"),
            Log = Log(root),
            Channels = channels,
            Readings = Readings(root, channels),
            Events = Events(root),
            Test = Test(root, kind, charge),
        };
        Check(root, description);
        return description;
    }

    private static void Check(SectionReader root, RunDescription run)
    {
        if (run.Kind != RunKind.Run && run.Test is null && !root.Has("test"))
            root.Complain("kind", $"a {root.Text("kind")} needs the group 'test'");
        if (run.Kind == RunKind.Run && root.Has("test")) root.Complain("test", "the group 'test' belongs to a leak-test or proof-test; say so with 'kind'");
        if (root.Has("channels") && run.Channels.Count == 0 && root.Context.Problems.IsEmpty) root.Complain("channels", "there is no channel, so nothing was recorded");
        if (run.Log is null)
        {
            foreach (var c in run.Channels.Where(c => c.Column.Length > 0))
                root.Context.Problems.Add(c.Line, c.FileColumn, $"channel '{FileTree.Shorten(c.Name)}' names the column '{FileTree.Shorten(c.Column)}', but there is no group 'log'; write 'log: {{file: log.csv}}'");
        }
        foreach (var c in run.Channels.Where(c => c.Column.Length == 0 && run.Readings.All(r => r.Channel != c.Name)))
            root.Context.Problems.Add(c.Line, c.FileColumn, $"channel '{FileTree.Shorten(c.Name)}' has neither a column of the log nor a reading");
    }

    private static List<ChannelDescription> Channels(SectionReader root)
    {
        var channels = new List<ChannelDescription>();
        if (!root.Has("channels") || root.Map("channels") is not { } map) return channels;
        foreach (var (name, value) in map.Entries)
            if (ChannelReader.Read(root.Context, name, value) is { } channel) channels.Add(channel);
        foreach (var c in channels.Where(c => c.Sensor.ColdJunctionChannel is not null))
        {
            var junction = channels.FirstOrDefault(o => o.Name == c.Sensor.ColdJunctionChannel);
            if (junction is null || junction.Sensor.Kind.Measured != Sensors.Measured.Temperature || junction.Column.Length == 0 || junction.Sensor.ColdJunctionChannel is not null)
                root.Context.Problems.Add(c.Line, c.FileColumn, $"channel '{FileTree.Shorten(c.Name)}': cold-junction: '{FileTree.Shorten(c.Sensor.ColdJunctionChannel!)}' is neither a temperature such as 23 °C nor another channel of the log that measures one");
        }
        return channels;
    }

    private static LogDescription? Log(SectionReader root) => root.Section("log", "the log") is not { } r ? null : new LogDescription
    {
        File = r.Has("file") ? r.Text("file") : "log.csv",
        TimeColumn = Optional(r, "time"),
        DateColumn = Optional(r, "date"),
        TimeForm = r.Choice("time-form"),
        TimeUnit = r.Choice("time-unit"),
        IntervalS = r.OptionalQuantity("interval"),
        Delimiter = r.Choice("delimiter"),
        Decimal = r.Choice("decimal"),
        DateOrder = r.Choice("date-order"),
        ClockAheadS = r.Quantity("clock-ahead", 0),
        ForwardJumps = r.Choice("forward-jumps") ?? "judge",
    };

    private static List<HandReading> Readings(SectionReader root, List<ChannelDescription> channels)
    {
        var readings = new List<HandReading>();
        foreach (var (r, _) in root.Sections("readings", "a reading"))
        {
            if (readings.Count > MostReadings)
            {
                root.Complain("readings", $"there are more than {MostReadings} readings, which is the limit; put them into a log");
                break;
            }
            var time = Moment(r, "time");
            if (time is null || !r.Has("values") || r.Map("values") is not { } values) continue;
            foreach (var (name, value) in values.Entries)
            {
                if (channels.All(c => c.Name != name.Text)) r.Context.Problems.Add(name, $"there is no channel '{FileTree.Shorten(name.Text)}'; {ChannelReader.Nearest(name.Text, channels.Select(c => c.Name))}");
                else if (value is ScalarNode { Text.Length: > 0 } scalar) readings.Add(new(time, name.Text, scalar.Text, scalar.Line, scalar.Column));
                else r.Context.Problems.Add(value, $"{FileTree.Shorten(name.Text)}: a single value is expected, such as -120 °C; here is {value.What}");
            }
        }
        return readings;
    }

    private static List<EventDescription> Events(SectionReader root)
    {
        var events = new List<EventDescription>();
        foreach (var (r, node) in root.Sections("events", "an event"))
        {
            var time = Moment(r, "time");
            var word = r.Choice("what");
            if (time is null || word is null) continue;
            var kind = Enum.GetValues<EventKind>().First(k => RunEvent.WordOf(k) == word);
            double? mass = r.OptionalQuantity("mass"), tare = r.OptionalQuantity("tare");
            if (kind == EventKind.Weighed && mass is null) r.Complain("what", "a weighing needs the key 'mass': what the balance showed");
            if (kind != EventKind.Weighed && mass is not null) r.Complain("mass", $"'{word}' has no mass; a weighing is written 'what: weighed'");
            if (kind is EventKind.ValveOpen or EventKind.ValveShut && !r.Has("at")) r.Complain("what", $"'{word}' needs the key 'at': which valve");
            double? uncertainty = mass is null ? null : r.OptionalQuantity("uncertainty") ?? 1e-3;
            // an empty flask may read a little less than it did: it holds nothing
            if (mass < tare - EmptyDoubts * uncertainty) r.Complain("tare", "the tare is larger than the mass");
            events.Add(new(time, kind, r.Text("at"), mass is { } gross ? Math.Max(0, gross - (tare ?? 0)) : null, uncertainty, r.Text("note"), node.Line));
        }
        return events;
    }

    private static TestDescription? Test(SectionReader root, RunKind kind, Composition? charge)
    {
        if (root.Section("test", "the test") is not { } r) return null;
        var water = kind == RunKind.ProofTest && r.Has("gas") && r.Text("gas") == "water";
        var gas = water ? null : r.Has("gas") ? r.Mixture("gas", false) : charge;
        if (!water && gas is null) r.Complain("gas", "the test does not say what was filled in, and there is no machine whose charge could be taken; write 'gas: nitrogen'");
        if (kind == RunKind.LeakTest && !r.Has("volume")) r.Complain("volume", "a leak test needs the key 'volume': without it a falling pressure is no leak in grams");
        if (kind == RunKind.ProofTest)
        {
            foreach (var key in new[] { "proof-pressure", "hold", "allowed-drop" }.Where(k => !r.Has(k))) r.Complain("test", $"a proof test needs the key '{key}'");
        }
        var test = new TightnessDescription
        {
            Gas = gas,
            VolumeM3 = r.OptionalQuantity("volume"),
            VolumeUncertainty = r.Quantity("volume-uncertainty", 0.1),
            PressureChannel = r.Text("pressure"),
            TemperatureChannel = r.Text("temperature"),
            TemperatureDriftK = r.Quantity("temperature-drift", 0.3),
            AllowedKgPerYear = r.OptionalQuantity("allowed-per-year"),
            ChargeShift = r.Quantity("charge-shift", 0.01),
            ProofPressurePa = r.OptionalQuantity("proof-pressure"),
            HoldS = r.OptionalQuantity("hold"),
            AllowedDropPa = r.OptionalQuantity("allowed-drop"),
        };
        return new(test, Moment(r, "from"), Moment(r, "to"), 0, 0);
    }

    private static string? Optional(SectionReader r, string key) => r.Has(key) ? r.Text(key) : null;

    private static Moment? Moment(SectionReader r, string key)
    {
        if (!r.Has(key)) return null;
        var text = r.Text(key);
        if (text.Length == 0) return null;
        var (line, column) = r.PlaceOf(key);
        if (Files.Moment.TryRead(text, line, column, out var moment)) return moment;
        r.Complain(key, $"{key}: '{FileTree.Shorten(text)}' is no time; write 10:05, 2026-03-14 10:05, or 25 min after the start");
        return null;
    }
}
