using Coldwright.Machine.Description;
using Coldwright.Machine.Files;

namespace Coldwright.Machine.Layout;

/// <summary>Follows the lines from port to port.</summary>
internal sealed class PathWalker
{
    private readonly MachineDescription _machine;
    private readonly ILookup<string, Line> _outgoing;
    private readonly ILookup<string, Line> _incoming;
    private readonly Dictionary<string, Part> _parts;
    private readonly List<LayoutRefusal> _refusals;
    // Remembered by line: branches of valves that part and meet again would else be followed by every way there is.
    private readonly Dictionary<Line, bool> _leadsAside = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<Line, bool> _comesFromBuffer = new(ReferenceEqualityComparer.Instance);

    public PathWalker(MachineDescription machine, List<LayoutRefusal> refusals)
    {
        (_machine, _refusals) = (machine, refusals);
        _parts = machine.Parts.ToDictionary(p => p.Name, StringComparer.Ordinal);
        _outgoing = machine.Lines.ToLookup(l => l.From, StringComparer.Ordinal);
        _incoming = machine.Lines.ToLookup(l => l.To, StringComparer.Ordinal);
        foreach (var group in machine.Lines.Where(l => !ComesFromBuffer(l)).GroupBy(l => l.To).Where(g => g.Count() > 1))
            refusals.Add(new(group.Last().FileLine, $"{group.Count()} lines lead into '{group.Key}'; the solvers handle one, without mixing of streams"));
    }

    /// <summary>The stations from a part on, the start first; ends where no line leads on, at a split, or back at the start.</summary>
    public List<PathStep> Walk(Part start)
    {
        var path = new List<PathStep> { new(start, start.Name, null) };
        var seen = new HashSet<string>(StringComparer.Ordinal) { start.Name };
        while (Onward(path[^1].Port) is { } line)
        {
            path.Add(new PathStep(_parts[Ports.PartName(line.To)], line.To, line));
            if (!seen.Add(line.To)) break;
        }
        return path;
    }

    /// <summary>The one line that leads on from a port, branches to a relief or buffer left aside; null at an end or at a split, which is refused.</summary>
    private Line? Onward(string port)
    {
        var onward = _outgoing[port].Where(l => !LeadsAside(l)).ToArray();
        if (onward.Length <= 1) return onward.FirstOrDefault();
        _refusals.Add(new(onward[1].FileLine, $"the stream splits after '{port}' (to {string.Join(" and ", onward.Select(l => $"'{l.To}'"))}); the solvers handle one path"));
        return null;
    }

    /// <summary>True when the line only leads to reliefs or a buffer, through valves if any: it carries nothing in normal running.</summary>
    public bool LeadsAside(Line line)
    {
        if (_leadsAside.TryGetValue(line, out var known)) return known;
        _leadsAside[line] = false;
        return _leadsAside[line] = _parts[Ports.PartName(line.To)] switch
        {
            ReliefPart or BufferPart => true,
            ValvePart => _outgoing[line.To].Any() && _outgoing[line.To].All(LeadsAside),
            _ => false,
        };
    }

    /// <summary>True when the line starts at a buffer, through valves if any.</summary>
    private bool ComesFromBuffer(Line line)
    {
        if (_comesFromBuffer.TryGetValue(line, out var known)) return known;
        _comesFromBuffer[line] = false;
        return _comesFromBuffer[line] = _parts[Ports.PartName(line.From)] switch
        {
            BufferPart => true,
            ValvePart => _incoming[line.From].Any() && _incoming[line.From].All(ComesFromBuffer),
            _ => false,
        };
    }
}
