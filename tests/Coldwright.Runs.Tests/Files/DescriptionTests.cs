using System.Text.Json;
using System.Text.Json.Nodes;
using Coldwright.Machine.Files;
using Coldwright.Runs.Files;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tests.Files;

/// <summary><c>run.yaml</c>: what is wrong is said with its line, all at once; what is right is understood.</summary>
public sealed class DescriptionTests
{
    private static readonly string _log = Make.Log(Enumerable.Range(0, 40).Select(i => (Make.Iso(15 * i), -100 - 0.1 * i)));

    public static TheoryData<string, string, string> Mistakes => new()
    {
        { "class: 1", "clas: 1", "run.yaml:6:62: channel 't' has no key 'clas'; the nearest is 'class'" },
        { "thermocouple-K", "thermocouple-X", "is none of thermocouple-K" },
        { "unit: °C", "unit: mV", "needs the key 'cold-junction'" },
        { "unit: °C", "unit: bar", "'bar' is no unit of a temperature; write °C, K, °F or mV" },
        { "sensor: thermocouple-K, unit: °C, class: 1", "sensor: pressure-gauge, unit: psi", "write psig for what a gauge shows or psia for absolute" },
        { ", unit: °C", "", "needs the key 'unit'" },
        { "class: 1", "class: 7", "class: '7' is none of 1, 2, 3" },
        { "class: 1", "cold-junction: 20 °C", "the cold junction is inside these numbers" },
        { "class: 1", "span: 10 bar", "a span belongs to a pressure gauge" },
        { "class: 1", "uncertainty: 2 bar", "uncertainty: '2 bar' is not a temperature difference" },
        { "class: 1", "uncertainty: 1 K, relative-uncertainty: 1 %", "gives both 'uncertainty' and 'relative-uncertainty'" },
        { "log: {}", "log: {}\nkind: leak-test", "needs the group 'test'" },
        { "log: {}", "log: {}\nevents: [{time: noon, what: start}]", "'noon' is no time" },
        { "log: {}", "log: {}\nevents: [{time: \"09:05\", what: begin}]", "'begin' is none of start, stop" },
        { "log: {}", "log: {}\nevents: [{time: \"09:05\", what: weighed, at: flask}]", "a weighing needs the key 'mass'" },
        { "log: {}", "log: {}\nevents: [{time: \"09:05\", what: valve-open}]", "needs the key 'at'" },
        { "log: {}", "log: {}\nreadings: [{time: \"09:05\", values: {tt: 20 °C}}]", "there is no channel 'tt'; the nearest is 't'" },
        { "log: {}", "", "there is no group 'log'" },
        { "start: 2026-03-14", "start: yesterday", "'yesterday' is no time" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void MistakesAreNamed(string old, string replacement, string said) =>
        Assert.Contains(said, Make.Problems(Make.OneChannel.Replace(old, replacement, StringComparison.Ordinal), _log), StringComparison.Ordinal);

    [Fact]
    public void AllMistakesAreSaidAtOnce()
    {
        var said = Make.Problems(Make.OneChannel.Replace("class: 1", "clas: 1", StringComparison.Ordinal).Replace("unit: °C", "unit: W", StringComparison.Ordinal).Replace("name: test", "nam: test", StringComparison.Ordinal), _log);
        Assert.Equal(3, said.Split('\n').Length);
    }

    [Fact]
    public void GaugeReadingsAreCountedFromTheDaysBarometer()
    {
        var yaml = "name: t\nroom: {pressure: 950 mbara}\nchannels:\n  p: {at: coil, sensor: pressure-gauge, class: 1, span: 25 bar}\nreadings:\n  - {time: 0 s, values: {p: 17 barg}}\n  - {time: 60 s, values: {p: 18 bara}}\n";
        var channel = Make.Record(yaml, "").Channel("p")!;
        Assert.Equal(17.95e5, channel.Values[0], 1e-6);
        Assert.Equal(18.00e5, channel.Values[1], 1e-6);
        Assert.Contains(channel.AtLowest, p => p.Name == "barometer");
    }

    [Fact]
    public void ABarometerInTheLogGoesBeforeTheDaysFigure()
    {
        var yaml = "name: t\nroom: {pressure: 950 mbara}\nlog: {}\nchannels:\n  b: {column: b, at: room, sensor: barometer, unit: mbara, uncertainty: 0.5 mbar}\n  p: {column: p, at: coil, sensor: pressure-gauge, unit: barg, class: 1, span: 25 bar}\n";
        var log = "time,b,p\n" + string.Concat(Enumerable.Range(0, 40).Select(i => $"{Make.Iso(15 * i)},{1000 + i},1.00\n"));
        var channel = Make.Record(yaml, log).Channel("p")!;
        Assert.Equal(2.00e5, channel.Values[0], 1e-6);
        Assert.Equal(2.039e5, channel.Values[39], 1e-6);
        // its own 0.5 mbar, and its step of 1 mbar evenly spread
        Assert.Equal(Math.Sqrt(50 * 50 + 100 * 100 / 12.0), channel.AtLowest.Single(p => p.Name == "barometer").Standard, 0.1);
    }

    /// <summary>A signal of 4 to 20 mA for 0 to 40 bar stands at 12 mA for 20 bar gauge (the middle of a straight line).</summary>
    [Fact]
    public void ASignalIsAStraightLine()
    {
        var yaml = "name: t\nroom: {pressure: 1000 mbara}\nlog: {}\nchannels:\n  p: {column: p, at: coil, sensor: pressure-gauge, signal: {low-reading: 4, low: 0 barg, high-reading: 20, high: 40 barg}, class: 0.5, span: 40 bar}\n";
        var channel = Make.Record(yaml, "time,p\n" + string.Concat(Enumerable.Range(0, 40).Select(i => $"{Make.Iso(15 * i)},{(i % 2 == 0 ? "12.000" : "4.000")}\n"))).Channel("p")!;
        Assert.Equal(21e5, channel.Values[0], 1e-6);
        Assert.Equal(1e5, channel.Values[1], 1e-6);
    }

    /// <summary>-5.829 mV with the junction at 0 °C is -196 °C (NIST type K table); with the junction at 25 °C (1.000 mV) the meter shows -6.829 mV.</summary>
    [Fact]
    public void ABareThermocoupleIsCountedFromItsJunction()
    {
        var yaml = "name: t\nroom: {pressure: 1000 mbara}\nlog: {}\nchannels:\n  j: {column: j, at: room, sensor: thermometer, unit: °C, uncertainty: 0.2 K}\n  t: {column: t, at: coil, sensor: thermocouple-K, unit: mV, cold-junction: j, class: 3}\n";
        var log = "time,j,t\n" + string.Concat(Enumerable.Range(0, 40).Select(i => $"{Make.Iso(15 * i)},{(i % 2 == 0 ? "0.00,-5.829" : "25.00,-6.829")}\n"));
        var channel = Make.Record(yaml, log).Channel("t")!;
        Assert.Equal(77.15, channel.Values[0], 0.04);
        Assert.Equal(77.15, channel.Values[1], 0.06);
        Assert.Equal(0.2 * 2.47, channel.AtLowest.Single(p => p.Name == "cold junction").Standard, 0.03);
    }

    [Fact]
    public void NotesAloneMakeARecord()
    {
        var yaml = """
            name: by hand
            start: 2026-03-14
            room: {pressure: 1000 mbara}
            channels:
              t: {at: coil, sensor: thermocouple-K}
            readings:
              - {time: "23:30", values: {t: 20 °C}}
              - {time: "23:50", values: {t: -50 °F}}
              - {time: "00:20", values: {t: 150 K}}
            events:
              - {time: "23:35", what: start, at: compressor}
              - {time: "00:10", what: noted, note: it hisses}
            """;
        var record = Make.Record(yaml, "");
        Assert.Null(record.Log);
        var channel = record.Channel("t")!;
        Assert.Equal([0, 1200, 3000], channel.TimesS.ToArray());
        Assert.Equal(150, channel.Values[2], 1e-9);
        Assert.Equal((-50 + 459.67) / 1.8, channel.Values[1], 1e-9);
        Assert.Equal([300, 2400], record.Events.Select(e => e.TimeS));
        Assert.Equal(new DateTime(2026, 3, 14, 23, 30, 0), record.Start);
    }

    [Fact]
    public void EventsAndLogShareTheWallClock()
    {
        var yaml = Make.OneChannel.Replace("log: {}", "log: {clock-ahead: 2 min}\nevents:\n  - {time: \"09:05\", what: start}\n  - {time: 3 min, what: stop}", StringComparison.Ordinal);
        var record = Make.Record(yaml, _log);
        // The logger's 09:00:00 was 08:58:00 by the wrist.
        Assert.Equal([180, 420], record.Events.Select(e => e.TimeS));
    }

    [Fact]
    public void AnElapsedLogNeedsAStartForEventsByTheClock()
    {
        var log = "time [s],T\n" + string.Concat(Enumerable.Range(0, 40).Select(i => $"{15 * i},-100.0\n"));
        var yaml = Make.OneChannel.Replace("log: {}", "log: {}\nevents: [{time: \"09:05\", what: start}]", StringComparison.Ordinal);
        Assert.Contains("write 'start:", Make.Problems(yaml, log), StringComparison.Ordinal);
        Assert.Equal(300, Make.Record(yaml.Replace("start: 2026-03-14", "start: 2026-03-14 09:00", StringComparison.Ordinal), log).Events[0].TimeS);
    }

    [Fact]
    public void WeighingsAreNet()
    {
        var yaml = Make.OneChannel.Replace("log: {}", "log: {}\nevents: [{time: \"09:05\", what: weighed, at: flask, mass: 1.294 kg, tare: 1108 g}]", StringComparison.Ordinal);
        var weighed = Make.Record(yaml, _log).Events[0];
        Assert.Equal(0.186, weighed.MassKg!.Value, 1e-12);
        Assert.Equal(1e-3, weighed.MassUncertaintyKg);
    }

    /// <summary>An empty flask on a balance that is good to a gram or two: it holds nothing, and that is no mistake of the file.</summary>
    [Fact]
    public void AnEmptyFlaskMayReadALittleLessThanItDid()
    {
        string Yaml(string mass) => Make.OneChannel.Replace("log: {}", $"log: {{}}\nevents: [{{time: \"09:05\", what: weighed, at: flask, mass: {mass}, tare: 1108 g, uncertainty: 2 g}}]", StringComparison.Ordinal);
        Assert.Equal(0, Make.Record(Yaml("1106 g"), _log).Events[0].MassKg);
        Assert.Contains("the tare is larger than the mass", Make.Problems(Yaml("1090 g"), _log), StringComparison.Ordinal);
    }

    [Fact]
    public void TheSchemaIsWhatTheKeyTableSays()
    {
        var path = Path.Combine(Examples.Root, "data", "schema", "run.schema.json");
        var expected = SchemaText.Write(RunKeys.Root, RunKeys.SchemaTitle);
        // To write the file anew after a change of the key table: COLDWRIGHT_WRITE_SCHEMA=1 ./test
        if (Environment.GetEnvironmentVariable("COLDWRIGHT_WRITE_SCHEMA") == "1") File.WriteAllText(path, expected);
        Assert.Equal(expected, File.ReadAllText(path));
        var schema = Json.Schema.JsonSchema.FromText(expected);
        foreach (var run in Examples.Runs)
        {
            using var document = JsonDocument.Parse(YamlAsJson(File.ReadAllText(Path.Combine(run, "run.yaml"))));
            Assert.True(schema.Evaluate(document.RootElement).IsValid, run);
        }
    }

    [Fact]
    public void EveryEventHasItsWord() => Assert.Equal(Enum.GetValues<EventKind>().Length, Enum.GetValues<EventKind>().Select(RunEvent.WordOf).Distinct().Count());

    // Every value of run.yaml is text, except the numbers of a signal, which may be either.
    private static string YamlAsJson(string yaml)
    {
        var problems = new ProblemList("run.yaml");
        return Convert(Machine.Files.Tree.FileTree.Read(yaml, problems)!)!.ToJsonString();

        static JsonNode? Convert(Machine.Files.Tree.FileNode node) => node switch
        {
            Machine.Files.Tree.MapNode map => new JsonObject(map.Entries.Select(e => KeyValuePair.Create(e.Key.Text, Convert(e.Value)))),
            Machine.Files.Tree.ListNode list => new JsonArray([.. list.Items.Select(Convert)]),
            Machine.Files.Tree.ScalarNode scalar => JsonValue.Create(scalar.Text),
            _ => null,
        };
    }
}
