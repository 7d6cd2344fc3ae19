using Coldwright.Machine.Description;
using Coldwright.Machine.Files;

namespace Coldwright.Machine.Layout;

/// <summary>Matches a buffer's two lines: filled from the compressor's discharge or the aftercooler, bled to the suction. Valves may stand in both, reliefs may branch off.</summary>
internal sealed class BufferMatch(MachineDescription machine, PathWalker walker, List<LayoutRefusal> refusals)
{
    private readonly Dictionary<string, Part> _parts = machine.Parts.ToDictionary(p => p.Name, StringComparer.Ordinal);

    /// <summary>The lines that fill and bleed it; empty without a buffer.</summary>
    public IReadOnlyList<Line> Lines { get; private set; } = [];

    /// <summary>Follows the buffer's lines; a misfit is refused.</summary>
    public void Match()
    {
        if (machine.PartsOf<BufferPart>().FirstOrDefault() is not { } buffer) return;
        var fill = Follow(buffer, machine.Lines, l => l.To, l => l.From);
        var bleed = Follow(buffer, machine.Lines.Where(l => !walker.LeadsAside(l)).ToArray(), l => l.From, l => l.To);
        if (fill.End is not (AftercoolerPart or CompressorPart))
            refusals.Add(new(fill.Lines.LastOrDefault()?.FileLine ?? buffer.FileLine, $"'{buffer.Name}' is to be filled by one line from the aftercooler or the compressor; {Found(fill.End, "comes from")}"));
        if (bleed.End is not CompressorPart)
            refusals.Add(new(bleed.Lines.LastOrDefault()?.FileLine ?? buffer.FileLine, $"'{buffer.Name}' is to bleed by one line to the compressor's suction; {Found(bleed.End, "leads to")}"));
        Lines = [.. fill.Lines, .. bleed.Lines];
    }

    private static string Found(Part? end, string verb) => end is null ? "there is none" : $"the line {verb} '{end.Name}' ({PartWords.KindOf(end).Word})";

    /// <summary>The lines from the buffer to the next part that is no valve, against or with the flow; no part where there is not exactly one line.</summary>
    private (Part? End, List<Line> Lines) Follow(Part start, IReadOnlyList<Line> among, Func<Line, string> near, Func<Line, string> far)
    {
        var (at, lines) = (start, new List<Line>());
        while (among.Where(l => Ports.PartName(near(l)) == at.Name).ToArray() is [var line] && lines.Count < among.Count)
        {
            lines.Add(line);
            at = _parts[Ports.PartName(far(line))];
            if (at is not ValvePart) return (at, lines);
        }
        return (null, lines);
    }
}
