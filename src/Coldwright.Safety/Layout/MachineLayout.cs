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

    /// <summary>Highest working pressure in a zone, Pa absolute; after a standstill the whole loop has one pressure.</summary>
    public double PressurePa(Zone zone) => zone switch
    {
        Zone.High => Math.Max(Machine.Operation.HighPressurePa, Machine.Operation.StandstillPressurePa ?? 0),
        Zone.Low => Math.Max(Machine.Operation.LowPressurePa, Machine.Operation.StandstillPressurePa ?? 0),
        Zone.Feed => FeedPressurePa,
        _ => Math.Max(PressurePa(Zone.High), FeedPressurePa),
    };

    /// <summary>Highest working pressure of a part, Pa absolute.</summary>
    public double PressurePa(Part part) => part switch
    {
        FlaskPart or BlockPart or ColdBoxPart => Machine.Room.PressurePa,
        // The high pressure is that ahead of the recuperator; the compressor works against the aftercooler as well.
        CompressorPart or AftercoolerPart => Math.Max(Machine.Operation.HighPressurePa + AftercoolerDropPa, PressurePa(Zone.High)),
        BufferPart buffer => Math.Max(PressurePa(Zone.High), buffer.FullyOpenPressurePa ?? buffer.OpeningPressurePa),
        _ => PressurePa(ZoneOf(part)),
    };

    /// <summary>Highest working pressure of a line, Pa absolute.</summary>
    public double PressurePa(Line line)
    {
        var pressure = PressurePa(ZoneOf(line));
        if (PartAt(line.From) is CompressorPart compressor) pressure = Math.Max(pressure, PressurePa(compressor));
        foreach (var end in (string[])[line.From, line.To])
            if (PartAt(end) is BufferPart buffer) pressure = Math.Max(pressure, PressurePa(buffer));
        return pressure;
    }

    /// <summary>True when cold liquid can get into a line.</summary>
    public bool IsWet(Line line) => _wet.Contains(line);

    /// <summary>The part at a port; null when no part has that name.</summary>
    public Part? PartAt(string port) => _parts.GetValueOrDefault(ColdBoxContents.PartName(port));

    /// <summary>The volumes left when every valve is shut, the feed closed and the compressor at rest.</summary>
    public IEnumerable<ClosedVolume> ClosedVolumes()
    {
        var left = new HashSet<Line>(Machine.Lines, ReferenceEqualityComparer.Instance);
        while (left.Count > 0)
        {
            var lines = Joined(Machine.Lines.First(left.Contains));
            left.ExceptWith(lines);
            var touched = lines.SelectMany(l => new[] { l.From, l.To }).Select(PartAt).OfType<Part>().Distinct().ToArray();
            var parts = touched.Where(p => !Closes(p)).ToArray();
            var zone = lines.Select(ZoneOf).FirstOrDefault(z => z != Zone.Unknown);
            yield return new(parts, touched.Where(p => Closes(p) && p is not FeedPart).ToArray(), lines, zone, lines.Any(_wet.Contains) || parts.Any(p => p is VesselPart),
                lines.Any(l => PartAt(l.From) is CompressorPart), lines.Any(l => PartAt(l.To) is CompressorPart));
        }
        foreach (var vessel in Machine.PartsOf<VesselPart>())
            if (!Machine.Lines.Any(l => PartAt(l.From) == vessel || PartAt(l.To) == vessel))
                yield return new([vessel], [], [], Zone.Feed, true, false, false);
    }

    private double AftercoolerDropPa => Machine.PartsOf<AftercoolerPart>().Sum(a => a.PressureDropPa);

    private double FeedPressurePa => Machine.PartsOf<FeedPart>().Select(f => f.PressurePa).DefaultIfEmpty(Machine.Room.PressurePa).Max();

    /// <summary>A valve can be shut, a throttle that is a valve too, and the supply behind a feed; a compressor's own valves let nothing back.</summary>
    private static bool Closes(Part? part) => part is ValvePart or FeedPart or CompressorPart or ThrottlePart { Valve: not null };

    private List<Line> Joined(Line seed)
    {
        var found = new List<Line> { seed };
        for (var i = 0; i < found.Count; i++)
            foreach (var port in (string[])[found[i].From, found[i].To])
            {
                var part = PartAt(port);
                if (part is not CompressorPart && Closes(part)) continue;
                foreach (var line in Machine.Lines)
                    if (!found.Contains(line, ReferenceEqualityComparer.Instance) && (part is CompressorPart ? SameSide(line, found[i], port) : SameStream(line.From, port) || SameStream(line.To, port)))
                        found.Add(line);
            }
        return found;
    }

    /// <summary>Both lines leave the compressor, or both enter it: its discharge is one space, its suction another.</summary>
    private static bool SameSide(Line line, Line other, string compressor) =>
        (line.From == compressor && other.From == compressor) || (line.To == compressor && other.To == compressor);

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
