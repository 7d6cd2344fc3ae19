using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Report.Parts;

namespace Coldwright.Report.Loops;

/// <summary>What the machine file says about a part, as a word or two for the drawing.</summary>
internal static class PartDetails
{
    /// <summary>Short texts; none when the file says nothing that helps to know the part again.</summary>
    public static IEnumerable<string> Of(Part part, PartUnits units)
    {
        string Length(double m) => Plain(m, "m", units);
        return part switch
        {
            CompressorPart c => [c.Type == CompressorType.Rotary ? "rotary" : "reciprocating"],
            FeedPart f => [f.Gas],
            RecuperatorPart { LengthM: { } l } r => [r.Tubes > 1 ? $"{Length(l)}, {r.Tubes} tubes" : Length(l)],
            ThrottlePart { Capillary: { } c } => [$"{Length(c.BoreM)} bore", $"{Length(c.LengthM)} long"],
            ThrottlePart { Valve: { } v } => [$"valve, {units.Readout.Fixed(100 * v.Opening, 0)}\u00a0% open"],
            CoilPart { LengthM: { } l } => [Length(l)],
            VesselPart v => [Plain(v.VolumeM3, "m3", units)],
            FlaskPart f => [Plain(f.VolumeM3, "m3", units)],
            BufferPart b => [Plain(b.VolumeM3, "m3", units), $"opens at {units.Text(b.OpeningPressurePa, "Pa")}"],
            ReliefPart r => [$"opens at {units.Text(r.SetPressurePa, "Pa")}"],
            ColdBoxPart b => [Wall(b, units)],
            _ => [],
        };
    }

    /// <summary>The word behind <c>kind</c>.</summary>
    public static string Kind(Part part) => PartWords.KindOf(part).Word;

    /// <summary>A described size as one writes it: no zeros that only tell how it was rounded.</summary>
    public static string Plain(double value, string unit, PartUnits units)
    {
        var text = units.Text(value, unit);
        var end = text.IndexOfAny(['\u00a0', ' ']);
        var number = end < 0 ? text : text[..end];
        return number.Contains('.') ? number.TrimEnd('0').TrimEnd('.') + text[number.Length..] : text;
    }

    private static string Wall(ColdBoxPart box, PartUnits units) => box.Layers.Count > 1
        ? $"{Plain(box.WallM, "m", units)} in {box.Layers.Count} layers"
        : $"{Plain(box.WallM, "m", units)} {box.GivenInsulation ?? box.Layers[0].Material}";
}
