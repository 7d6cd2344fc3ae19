using Coldwright.Machine.Description;
using Coldwright.Report.Parts;

namespace Coldwright.Report.Loops;

/// <summary>A part or line in one sentence: shown when it is pointed at, read out to those who cannot see it.</summary>
internal sealed class LoopTitles(LoopFigures figures, PartUnits units)
{
    public string Of(Part part) => Join([Named(part), .. PartDetails.Of(part, units)], part.Name);

    public string Of(Line line)
    {
        var tube = line.Tube is { } t ? $"{t.Text}, {PartDetails.Plain(line.LengthM, "m", units)}" : "joined directly";
        return Join([$"line from {line.From} to {line.To}", tube, line.Place == Place.ColdBox ? "in the cold box" : "in the room"], LoopFigures.PlaceOf(line));
    }

    private static string Named(Part part)
    {
        var kind = PartDetails.Kind(part);
        return part.Name == kind ? part.Name : $"{part.Name} ({kind})";
    }

    private string Join(IEnumerable<string> words, string place)
    {
        var all = words.Concat(figures.At(place).Select(f => FigureText.Of(f, units.Readout)));
        if (figures.MarkAt(place) is { } mark) all = all.Append($"findings: {mark.Why}");
        return string.Join(", ", all);
    }
}
