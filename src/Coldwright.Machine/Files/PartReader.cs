using Coldwright.Machine.Description;
using Coldwright.Machine.Files.Keys;
using Coldwright.Machine.Files.Parts;
using Coldwright.Machine.Files.Tree;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files;

/// <summary>Makes a part from its group of keys.</summary>
internal static class PartReader
{
    /// <summary>The part; null when its kind is missing or unknown. Wrong values stand in as NaN and are reported.</summary>
    public static Part? Read(ReadingContext context, ScalarNode name, FileNode node)
    {
        var where = $"part '{FileTree.Shorten(name.Text)}'";
        if (!IsName(name.Text))
            context.Problems.Add(name, $"'{FileTree.Shorten(name.Text)}' cannot name a part; use letters, digits, - and _, at most 40");
        if (node is not MapNode map)
        {
            context.Problems.Add(node, $"{where} must be a group of keys, at least {{kind: …}}; here is {node.What}");
            return null;
        }
        var kindNode = map.Entries.FirstOrDefault(e => e.Key.Text == "kind").Value;
        if (kindNode is not ScalarNode { Text.Length: > 0 } word)
        {
            context.Problems.Add(map, $"{where} does not say its kind; known are {string.Join(", ", PartKinds.Words)}");
            return null;
        }
        if (PartKinds.Find(word.Text) is not { } kind)
        {
            var near = NearestWord.Find(word.Text, PartKinds.Words).FirstOrDefault();
            context.Problems.Add(word, $"{where} has the unknown kind '{FileTree.Shorten(word.Text)}'; " + (near is null ? $"known are {string.Join(", ", PartKinds.Words)}" : $"the nearest is '{near}'"));
            return null;
        }
        var reader = new SectionReader(context, map, kind.Section, $"{where} ({kind.Word})");
        var part = Make(reader, kind, name.Text);
        return part with
        {
            FileLine = name.Line,
            MaximumPressurePa = kind.Section.Keys.Any(k => k.Name == "maximum-pressure") ? reader.OptionalQuantity("maximum-pressure") : null,
        };
    }

    private static bool IsName(string text) =>
        text.Length <= 40 && text.All(c => char.IsLetterOrDigit(c) || c is '-' or '_');

    private static Part Make(SectionReader r, PartKind kind, string name) => kind.Word switch
    {
        "compressor" => CompressorReader.Read(r, name),
        "aftercooler" => new AftercoolerPart { Name = name, ApproachK = r.Quantity("approach"), PressureDropPa = r.Quantity("pressure-drop", 0), FanPowerW = r.Quantity("fan-power", 0), GasVolumeM3 = r.OptionalQuantity("gas-volume") },
        "warm-exchanger" => new WarmExchangerPart { Name = name, ConductanceWPerK = r.Quantity("conductance"), GasVolumeM3 = r.OptionalQuantity("gas-volume") },
        "precooler" => PrecoolerReader.Read(r, name),
        "recuperator" => RecuperatorReader.Read(r, name),
        "throttle" => ThrottleReader.Read(r, name),
        "coil" => ColdEndReader.Coil(r, name),
        "vessel" => ColdEndReader.Vessel(r, name),
        "block" => new BlockPart { Name = name },
        "cold-box" => ColdEndReader.ColdBox(r, name),
        "feed" => FeedReader.Read(r, name),
        "buffer" => BufferReader.Read(r, name),
        "valve" => FeedReader.Valve(r, name),
        "relief" => new ReliefPart { Name = name, SetPressurePa = r.Quantity("set-pressure"), BoreM = r.OptionalQuantity("bore") },
        "flask" => FeedReader.Flask(r, name),
        _ => throw new InvalidOperationException($"the part kind '{kind.Word}' is in the key table but no part is made of it"),
    };
}
