using Coldwright.Machine.Files;
using Coldwright.Machine.Files.Tree;
using Coldwright.Quantities;
using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;

namespace Coldwright.Runs.Files;

/// <summary>Makes a channel from its group of keys.</summary>
internal static class ChannelReader
{
    /// <summary>The channel; null, and reported, when it cannot be used.</summary>
    public static ChannelDescription? Read(ReadingContext context, ScalarNode name, FileNode node)
    {
        var where = $"channel '{FileTree.Shorten(name.Text)}'";
        if (name.Text.Length > 60) context.Problems.Add(name, $"'{FileTree.Shorten(name.Text)}' has {name.Text.Length} characters; the limit of a channel's name is 60");
        if (node is not MapNode map)
        {
            context.Problems.Add(node, $"{where} must be a group of keys, at least {{at: …, sensor: …}}; here is {node.What}");
            return null;
        }
        var r = new SectionReader(context, map, RunKeys.Channel, where);
        var port = r.Text("at");
        if (r.Choice("sensor") is not { } word || SensorKind.Find(word) is not { } kind || port.Length == 0) return null;
        var place = new Whereabouts(port, End(r.Choice("end")));
        if (Sensor(r, kind) is not { } sensor) return null;
        return new(name.Text, r.Text("column"), place, sensor, r.Has("unit") || r.Has("signal"), name.Line, name.Column);
    }

    /// <summary>The nearest of some names, or all of them.</summary>
    public static string Nearest(string word, IEnumerable<string> known)
    {
        var names = known.ToArray();
        return NearestWord.Find(word, names).FirstOrDefault() is { } near ? $"the nearest is '{near}'" : $"known are {string.Join(", ", names.Select(FileTree.Shorten))}";
    }

    private static SensorEnd End(string? word) => word switch
    {
        "inlet" => SensorEnd.Inlet,
        "outlet" => SensorEnd.Outlet,
        "surface" => SensorEnd.Surface,
        _ => SensorEnd.Inside,
    };

    private static SensorDescription? Sensor(SectionReader r, SensorKind kind)
    {
        if (!TryUnit(r, kind, out var scale, out var unit, out var signal)) return null;
        var sensor = new SensorDescription
        {
            Kind = kind,
            UnitWord = r.Text("unit"),
            Scale = scale,
            Unit = unit,
            Signal = signal,
            Grade = Grade(r, kind),
            SpanPa = r.OptionalQuantity("span"),
            ColdJunctionUncertaintyK = r.OptionalQuantity("cold-junction-uncertainty"),
            Offset = Difference(r, "offset", kind) ?? 0,
            Uncertainty = Difference(r, "uncertainty", kind),
            RelativeUncertainty = r.OptionalQuantity("relative-uncertainty"),
            ResolutionRaw = r.OptionalQuantity("resolution"),
        };
        r.OnlyOneOf("uncertainty", "relative-uncertainty");
        if (kind.Measured != Measured.Pressure && r.Has("span")) r.Complain("span", "a span belongs to a pressure gauge");
        if (kind.Thermocouple is null && (r.Has("cold-junction") || r.Has("cold-junction-uncertainty")))
            r.Complain("cold-junction", $"a {kind.Word} has no cold junction");
        if (kind.Thermocouple is null || !r.Has("cold-junction"))
        {
            if (scale == RawScale.Millivolt) r.Complain("unit", "a voltage needs the key 'cold-junction': the temperature of the other junction, or the channel that measures it");
            return sensor;
        }
        var text = r.Text("cold-junction");
        if (scale != RawScale.Millivolt)
        {
            r.Complain("cold-junction", $"the logger has already made {r.Text("unit")} of the voltage, so the cold junction is inside these numbers; leave it out, or give the voltage in mV");
            return sensor;
        }
        return Quantity.TryParse(text, QuantityKind.Temperature.Between(200, 400), r.Context.RoomPressurePa, out var junction, out _)
            ? sensor with { ColdJunctionK = junction }
            : sensor with { ColdJunctionChannel = text };
    }

    private static bool TryUnit(SectionReader r, SensorKind kind, out RawScale scale, out Unit? unit, out SignalLine? signal)
    {
        (scale, unit, signal) = (RawScale.Unit, null, null);
        if (r.Section("signal", "the signal") is { } s)
        {
            scale = RawScale.Signal;
            double lowReading = s.Quantity("low-reading"), highReading = s.Quantity("high-reading");
            var low = End(s, "low", kind, out var lowGauge);
            var high = End(s, "high", kind, out var highGauge);
            if (lowReading == highReading) s.Complain("high-reading", $"both ends have the reading {lowReading}; a line needs two");
            if (lowGauge != highGauge) s.Complain("high", "one end is gauge and the other absolute; write both the same way");
            if (double.IsNaN(low) || double.IsNaN(high) || double.IsNaN(lowReading) || double.IsNaN(highReading) || lowReading == highReading) return false;
            signal = new(lowReading, low, highReading, high, lowGauge);
            return true;
        }
        if (!r.Has("unit"))
        {
            if (!r.Has("column")) return true;
            r.Complain("unit", $"a column of the log needs the key 'unit': {Example(kind)}");
            return false;
        }
        var word = NumberText.Normalise(r.Text("unit"));
        if (word is "mV" && kind.Thermocouple is not null)
        {
            scale = RawScale.Millivolt;
            return true;
        }
        if (kind.ZeroOhm is not null && word.ToLowerInvariant() is "ohm" or "ohms" or "ω" or "Ω" or "\u2126")
        {
            scale = RawScale.Ohm;
            return true;
        }
        // The door for quantities says best what is wrong with a unit; 300 is inside every kind's range but is not shown.
        if (!UnitExpression.TryParse(word, out var found) || word.Length == 0 || found.Dimension != kind.Quantity.Dimension || !IsWhole(found, kind))
        {
            r.Complain("unit", $"unit: '{FileTree.Shorten(word)}' is no unit of {kind.Quantity.Name}{GaugeHint(word, found, kind)}; {Example(kind)}");
            return false;
        }
        unit = found;
        return true;
    }

    private static double End(SectionReader s, string key, SensorKind kind, out bool isGauge)
    {
        isGauge = false;
        var text = s.Text(key);
        if (text.Length == 0) return double.NaN;
        var wide = kind.Quantity with { Minimum = null, Maximum = null };
        if (!Quantity.TryParse(text, wide, 0, out var value, out var problem))
        {
            // Gauge ends at or below zero are no pressures yet: the room's comes on top.
            if (kind.Measured != Measured.Pressure || !NumberText.TryRead(NumberText.Normalise(text), out var number, out var rest, out _)
                || !UnitExpression.TryParse(rest, out var bare) || bare.Reference != UnitReference.Gauge)
            {
                s.Complain(key, $"{key}: {problem.Message}");
                return double.NaN;
            }
            value = bare.ToSi(number, 0);
        }
        isGauge = NumberText.TryRead(NumberText.Normalise(text), out _, out var word, out _) && UnitExpression.TryParse(word, out var unit) && unit.Reference == UnitReference.Gauge;
        return value;
    }

    private static bool IsWhole(Unit unit, SensorKind kind) => kind.Quantity.Scale switch
    {
        QuantityScale.Pressure => unit.Reference is UnitReference.Gauge or UnitReference.Absolute,
        QuantityScale.AbsolutePressure => unit.Reference == UnitReference.Absolute,
        QuantityScale.TemperaturePoint => unit.Reference is UnitReference.TemperaturePoint or UnitReference.None,
        _ => unit.Reference == UnitReference.None,
    };

    private static string GaugeHint(string word, Unit? unit, SensorKind kind) =>
        kind.Measured == Measured.Pressure && unit?.Dimension == kind.Quantity.Dimension ? $": write {word}g for what a gauge shows or {word}a for absolute" : "";

    private static string Example(SensorKind kind) => kind switch
    {
        { Thermocouple: not null } => "write °C, K, °F or mV",
        { ZeroOhm: not null } => "write °C, K, °F or ohm",
        { Element: SensorElement.Barometer } => "write mbara, kPaa or bara",
        _ => kind.Measured switch
        {
            Measured.Temperature => "write °C, K or °F",
            Measured.Pressure => "write barg, bara, psig, psia or kPaa",
            Measured.Power => "write W or kW",
            Measured.Energy => "write kWh, Wh or J",
            Measured.Mass => "write g, kg or lb",
            _ => "write g/s or kg/h",
        },
    };

    private static string Grade(SectionReader r, SensorKind kind)
    {
        if (!r.Has("class")) return "";
        var text = r.Text("class");
        string[] known = kind switch
        {
            { Thermocouple: not null } => ["1", "2", "3"],
            { ZeroOhm: not null } => ["AA", "A", "B", "C"],
            { Element: SensorElement.PressureGauge } => ["0.1", "0.25", "0.5", "0.6", "1", "1.6", "2", "2.5", "3", "4"],
            _ => [],
        };
        var word = kind.Element == SensorElement.PressureGauge && text.EndsWith(".0", StringComparison.Ordinal) ? text[..^2] : text;
        if (known.Contains(word)) return word;
        r.Complain("class", known.Length == 0 ? $"a {kind.Word} has no class here; give 'uncertainty' or 'relative-uncertainty'" : $"class: '{FileTree.Shorten(text)}' is none of {string.Join(", ", known)}");
        return "";
    }

    private static double? Difference(SectionReader r, string key, SensorKind kind)
    {
        if (!r.Has(key)) return null;
        var wanted = (kind.Measured switch
        {
            Measured.Temperature => QuantityKind.TemperatureDifference,
            Measured.Pressure => QuantityKind.PressureDifference,
            Measured.Power => QuantityKind.Power,
            Measured.Energy => QuantityKind.Energy,
            Measured.Mass => QuantityKind.Mass,
            _ => QuantityKind.MassFlow,
        }) with
        { Minimum = key == "uncertainty" ? 0 : null, AboveMinimum = key == "uncertainty", Maximum = null };
        if (Quantity.TryParse(r.Text(key), wanted, r.Context.RoomPressurePa, out var value, out var problem)) return value;
        r.Complain(key, $"{key}: {problem.Message}");
        return null;
    }
}
