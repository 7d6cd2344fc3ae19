using Coldwright.Machine.Files.Keys;
using Coldwright.Quantities;
using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;

namespace Coldwright.Runs.Files;

/// <summary>The keys of <c>run.yaml</c>.</summary>
public static class RunKeys
{
    /// <summary>The room on that day.</summary>
    public static FileSection Room { get; } = new("room",
    [
        Optional("temperature", (QuantityKind.Temperature with { Example = "20 °C" }).Between(230, 330), "Air temperature of the room; the machine's when left out."),
        Optional("pressure", QuantityKind.AbsolutePressure.Between(4e4, 1.2e5), "Barometer of that day, absolute; the machine's when left out."),
        Optional("pressure-uncertainty", (QuantityKind.PressureDifference with { Example = "2 mbar" }).Between(0, 1e4), "Its standard uncertainty."),
    ]);

    /// <summary>The logger's file.</summary>
    public static FileSection Log { get; } = new("log",
    [
        Text("file", "File that the logger wrote, in this folder; log.csv when left out."),
        Text("time", "Column of the time: its heading or its number from 1; found when left out."),
        Text("date", "Column of the date when the time column holds none; found when left out."),
        Choice("time-form", "How times are written; found when left out.", "date-time", "clock", "epoch", "elapsed", "spreadsheet"),
        Choice("time-unit", "Unit of elapsed times that are plain numbers; taken from the heading, else seconds.", "ms", "s", "min", "h"),
        Optional("interval", (QuantityKind.Time with { Example = "5 s" }).Above(0, 86400), "Time from row to row, when the log has no time column."),
        Choice("delimiter", "What stands between cells; found when left out.", "comma", "semicolon", "tab", "bar", "space"),
        Choice("decimal", "Decimal sign; found when left out.", "point", "comma"),
        Choice("date-order", "What comes first in dates like 03/04/2026; found when left out.", "day-first", "month-first"),
        Optional("clock-ahead", (QuantityKind.Time with { Example = "3 min" }).Between(-86400, 86400), "How far the logger's clock is ahead of the one the events were noted by."),
        Choice("forward-jumps", "What a long step forward is: nothing logged meanwhile (gap), the clock moved (clock), or to be judged by the readings on both sides (judge, as when left out).", "judge", "gap", "clock"),
    ]);

    /// <summary>A signal that stands for a quantity.</summary>
    public static FileSection Signal { get; } = new("signal",
    [
        Required("low-reading", (QuantityKind.Number with { Example = "4" }).Between(-1e9, 1e9), "Number in the log at the low end."),
        new("low", new TextForm(), true, "What it stands for, with unit."),
        Required("high-reading", (QuantityKind.Number with { Example = "20" }).Between(-1e9, 1e9), "Number in the log at the high end."),
        new("high", new TextForm(), true, "What it stands for, with unit."),
    ]);

    /// <summary>One channel.</summary>
    public static FileSection Channel { get; } = new("channel",
    [
        Text("column", "Column of the log: its heading or its number from 1; left out for readings noted by hand."),
        new("at", new PortForm(), true, "Where it sits: a part, part.stream, room, or machine (its whole electricity)."),
        Choice("end", "Which side of the part; inside when left out.", "inlet", "outlet", "inside", "surface"),
        Choice("sensor", "Kind of sensor.", required: true, [.. SensorKind.All.Select(k => k.Word)]),
        Text("unit", "Unit of the numbers: °C, K, mV, ohm, barg, psia, W, g; gauge and absolute written out."),
        new("signal", new SectionForm(Signal), false, "Straight line of a signal such as 4 to 20 mA."),
        Text("class", "Class of tolerance: 1, 2 or 3 (thermocouple), AA, A, B or C (Pt100), 1.6 (gauge: percent of span)."),
        Optional("span", (QuantityKind.PressureDifference with { Example = "25 bar" }).Above(0, 1e8), "Span of a gauge, from the lowest to the highest mark."),
        Text("cold-junction", "Temperature of the cold junction, or the channel that measures it; needed with mV."),
        Optional("cold-junction-uncertainty", QuantityKind.TemperatureDifference.Between(0, 50), "Standard uncertainty of that temperature."),
        Text("offset", "What the sensor shows too much, by your own check (ice, boiling nitrogen, a better gauge); taken off."),
        Text("uncertainty", "Standard uncertainty of the sensor, by your own check; replaces its class."),
        Optional("relative-uncertainty", (QuantityKind.Fraction with { Example = "1 %" }).Between(0, 1), "Standard uncertainty as a share of the reading; replaces its class."),
        Optional("resolution", (QuantityKind.Number with { Example = "0.1" }).Between(0, 1e6), "Smallest step of the logger in its own unit; found when left out."),
    ]);

    /// <summary>Readings noted at one moment.</summary>
    public static FileSection Reading { get; } = new("reading",
    [
        new("time", new TextForm(), true, "When: 10:05, 2026-03-14 10:05, or 25 min (after the start)."),
        new("values", new BySubstanceForm(new TextForm()), true, "Channel and value with unit."),
    ]);

    /// <summary>Something done or seen.</summary>
    public static FileSection Event { get; } = new("event",
    [
        new("time", new TextForm(), true, "When: 10:05, 2026-03-14 10:05, or 25 min (after the start)."),
        Choice("what", "What was done.", required: true, [.. Enum.GetValues<EventKind>().Select(RunEvent.WordOf)]),
        new("at", new PortForm(), false, "Part concerned."),
        Optional("mass", (QuantityKind.Mass with { Example = "412 g" }).Between(0, 1e4), "What the balance showed."),
        Optional("tare", (QuantityKind.Mass with { Example = "180 g" }).Between(0, 1e4), "What it showed empty; taken off."),
        Optional("uncertainty", (QuantityKind.Mass with { Example = "1 g" }).Above(0, 1e3), "Standard uncertainty of the weighing; 1 g when left out."),
        Text("note", "In your own words."),
    ]);

    /// <summary>A leak or proof test.</summary>
    public static FileSection Test { get; } = new("test",
    [
        new("gas", new MixtureForm(), false, "What was filled in; for a proof test water is a choice too. The machine's charge when left out."),
        Optional("volume", (QuantityKind.Volume with { Example = "2.4 L" }).Above(0, 100), "Volume that was shut in; needed to turn a falling pressure into a leak."),
        Optional("volume-uncertainty", (QuantityKind.Fraction with { Example = "5 %" }).Between(0, 1), "Its standard uncertainty as a share; 10 % when left out."),
        Text("pressure", "Channel of the pressure; the only one when left out."),
        Text("temperature", "Channel of the temperature of the gas; the only one when left out, else the room's."),
        Optional("temperature-drift", QuantityKind.TemperatureDifference.Between(0, 20), "How far the gas may have drifted away from that thermometer, one standard deviation; 0.3 K when left out."),
        Text("from", "When the test begins; the whole record when left out."),
        Text("to", "When it ends."),
        Optional("allowed-per-year", (QuantityKind.Mass with { Example = "5 g" }).Above(0, 100), "Charge that may be lost in a year."),
        Optional("charge-shift", (QuantityKind.Fraction with { Example = "1 %" }).Above(0, 0.5), "Change of any mole fraction of the charge that matters; 0.01 when left out."),
        Optional("proof-pressure", (QuantityKind.Pressure with { Example = "35 barg" }).Above(0, 5e7), "Pressure to be held by a proof test."),
        Optional("hold", (QuantityKind.Time with { Example = "30 min" }).Above(0, 1e6), "How long it must be held."),
        Optional("allowed-drop", (QuantityKind.PressureDifference with { Example = "0.2 bar" }).Above(0, 1e7), "Fall of pressure, temperature taken out, that may be."),
    ]);

    /// <summary>The whole file.</summary>
    public static FileSection Root { get; } = new("run",
    [
        new("name", new TextForm(), true, "Your name for the run."),
        Choice("kind", "What was done; run when left out.", "run", "leak-test", "proof-test"),
        Text("start", "Date, or date and time, of the start; needed when neither log nor notes carry the date."),
        Text("cooler", "Folder of the cooler; the one above runs/ when left out."),
        new("room", new SectionForm(Room), false, "The room on that day."),
        new("log", new SectionForm(Log), false, "The logger's file; left out when readings were noted by hand alone."),
        new("channels", new BySubstanceForm(new SectionForm(Channel)), true, "The channels by name: which sensor sits where."),
        new("readings", new SectionListForm(Reading), false, "Readings noted by hand."),
        new("events", new SectionListForm(Event), false, "What was done and seen."),
        new("test", new SectionForm(Test), false, "The leak or proof test."),
    ]);

    /// <summary>Title of the schema.</summary>
    public const string SchemaTitle = "Coldwright run.yaml: what was done and which column is which sensor";

    private static FileKey Required(string name, QuantityKind kind, string meaning) => new(name, new QuantityForm(kind), true, meaning);

    private static FileKey Optional(string name, QuantityKind kind, string meaning) => new(name, new QuantityForm(kind), false, meaning);

    private static FileKey Text(string name, string meaning) => new(name, new TextForm(), false, meaning);

    private static FileKey Choice(string name, string meaning, params string[] words) => new(name, new ChoiceForm(words), false, meaning);

    private static FileKey Choice(string name, string meaning, bool required, string[] words) => new(name, new ChoiceForm(words), required, meaning);
}
