using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;

namespace Coldwright.Safety.Layout;

/// <summary>The lines of a machine followed from compressor and feed: which pressure is where, where liquid gets, what valves shut in.</summary>
internal sealed class MachineLayout
{
    private readonly Dictionary<string, Part> _parts;
    private readonly Dictionary<Line, Zone> _zones = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<Line> _wet = new(ReferenceEqualityComparer.Instance);

    public MachineDescription Machine { get; }

    public MachineLayout(MachineDescription machine)
    {
        Machine = machine;
        _parts = machine.Parts.ToDictionary(p => p.Name);
        foreach (var start in machine.Lines)
        {
            var from = PartAt(start.From);
            if (from is CompressorPart) Follow(start, Zone.High);
            else if (from is FeedPart) Follow(start, Zone.Feed);
        }
        foreach (var line in machine.Lines)
            if (StartsWet(line)) Wet(line);
    }

    /// <summary>Zone of a line.</summary>
    public Zone ZoneOf(Line line) => _zones.GetValueOrDefault(line);

    /// <summary>Zone of a part by its kind, or by the lines that touch it.</summary>
    public Zone ZoneOf(Part part) => part switch
    {
        CompressorPart or AftercoolerPart or WarmExchangerPart or PrecoolerPart or RecuperatorPart or ThrottlePart => Zone.High,
        CoilPart => Zone.Low,
        VesselPart or FeedPart => Zone.Feed,
        _ => Machine.Lines.Where(l => PartAt(l.From) == part || PartAt(l.To) == part).Select(ZoneOf).FirstOrDefault(z => z != Zone.Unknown),
    };

    /// <summary>Highest working pressure in a zone, Pa absolute.</summary>
    public double PressurePa(Zone zone) => zone switch
    {
        Zone.High => Machine.Operation.HighPressurePa,
        Zone.Low => Machine.Operation.LowPressurePa,
        Zone.Feed => FeedPressurePa,
        _ => Math.Max(Machine.Operation.HighPressurePa, FeedPressurePa),
    };

    /// <summary>The part at a port; null when no part has that name.</summary>
    public Part? PartAt(string port) => _parts.GetValueOrDefault(ColdBoxContents.PartName(port));

    /// <summary>The volumes left when every valve is shut and the feed closed.</summary>
    public IEnumerable<ClosedVolume> ClosedVolumes()
    {
        var left = new HashSet<Line>(Machine.Lines, ReferenceEqualityComparer.Instance);
        while (left.Count > 0)
        {
            var lines = Joined(Machine.Lines.First(left.Contains));
            left.ExceptWith(lines);
            var parts = lines.SelectMany(l => new[] { l.From, l.To }).Select(PartAt).OfType<Part>().Where(p => !Closes(p)).Distinct().ToArray();
            var zone = lines.Select(ZoneOf).FirstOrDefault(z => z != Zone.Unknown);
            yield return new(parts, lines, zone, lines.Any(_wet.Contains) || parts.Any(p => p is VesselPart));
        }
        foreach (var vessel in Machine.PartsOf<VesselPart>())
            if (!Machine.Lines.Any(l => PartAt(l.From) == vessel || PartAt(l.To) == vessel))
                yield return new([vessel], [], Zone.Feed, true);
    }

    private double FeedPressurePa => Machine.PartsOf<FeedPart>().Select(f => f.PressurePa).DefaultIfEmpty(Machine.Room.PressurePa).Max();

    /// <summary>A valve can be shut; so can the supply behind a feed.</summary>
    private static bool Closes(Part? part) => part is ValvePart or FeedPart;

    private List<Line> Joined(Line seed)
    {
        var found = new List<Line> { seed };
        for (var i = 0; i < found.Count; i++)
            foreach (var port in (string[])[found[i].From, found[i].To])
            {
                if (Closes(PartAt(port))) continue;
                foreach (var line in Machine.Lines)
                    if (!found.Contains(line, ReferenceEqualityComparer.Instance) && (SameStream(line.From, port) || SameStream(line.To, port)))
                        found.Add(line);
            }
        return found;
    }

    private void Follow(Line line, Zone zone)
    {
        if (!_zones.TryAdd(line, zone)) return;
        var part = PartAt(line.To);
        if (part is CompressorPart or FlaskPart or ReliefPart) return;
        if (part is ThrottlePart && zone == Zone.High) zone = Zone.Low;
        foreach (var next in After(line)) Follow(next, zone);
    }

    /// <summary>Cold liquid leaves the precooler (heavy components), the recuperator's cooled streams, the throttle, the coil and the vessel.</summary>
    private bool StartsWet(Line line)
    {
        var inner = PartAt(line.From);
        var low = ZoneOf(line) == Zone.Low;
        return inner is ThrottlePart or VesselPart || (inner is CoilPart && low) || (inner is PrecoolerPart or RecuperatorPart && !low);
    }

    private void Wet(Line line)
    {
        if (!_wet.Add(line)) return;
        // What has passed the recuperator's low side, the compressor or the flask is gas or in the open.
        var part = PartAt(line.To);
        if (part is CompressorPart or FlaskPart or ReliefPart || (part is RecuperatorPart && ZoneOf(line) == Zone.Low)) return;
        foreach (var next in After(line)) Wet(next);
    }

    private IEnumerable<Line> After(Line line) => Machine.Lines.Where(l => SameStream(l.From, line.To));

    /// <summary>Two ports carry the same stream when they are the same, or one of them leaves the stream out.</summary>
    private static bool SameStream(string left, string right)
    {
        if (left == right) return true;
        var part = ColdBoxContents.PartName(left);
        return part == ColdBoxContents.PartName(right) && (left.Length == part.Length || right.Length == part.Length);
    }
}
