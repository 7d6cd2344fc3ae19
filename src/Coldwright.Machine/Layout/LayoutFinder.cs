using Coldwright.Machine.Description;
using Coldwright.Machine.Files;

namespace Coldwright.Machine.Layout;

/// <summary>Matches a machine's paths with the layout the solvers handle.</summary>
internal static class LayoutFinder
{
    /// <summary>The layout; null, or to be thrown away, when anything was refused.</summary>
    public static LoopLayout? Find(MachineDescription machine, List<LayoutRefusal> refusals)
    {
        foreach (var group in machine.Parts.Where(p => p is not (ValvePart or ReliefPart)).GroupBy(p => PartWords.KindOf(p).Word).Where(g => g.Count() > 1))
            refusals.Add(new(group.Last().FileLine, $"there are {group.Count()} parts of kind {group.Key} ({Names(group)}); the solvers handle one"));
        if (One<CompressorPart>(machine) is not { } compressor)
        {
            refusals.Add(new(0, "there is no part of kind compressor, so there is no loop to follow"));
            return null;
        }
        if (refusals.Count > 0) return null;

        var walker = new PathWalker(machine, refusals);
        var before = refusals.Count;
        var loop = new LoopMatch(walker.Walk(compressor), refusals);
        // Where the stream splits the path ends, and calling that end a gap would be a second complaint about one thing.
        if (refusals.Count > before || !loop.Match()) return null;
        var product = new ProductMatch(machine, walker, refusals);
        product.Match();
        var buffer = new BufferMatch(machine, walker, refusals);
        buffer.Match();
        CheckLoad(machine, refusals);
        // After another refusal a path may have ended early, and what lies behind it would be called unused without reason.
        if (refusals.Count == 0) CheckUnused(machine, [.. loop.Path, .. product.Path], buffer.Lines, refusals);

        return new LoopLayout
        {
            Compressor = compressor,
            Aftercooler = loop.Aftercooler!,
            WarmExchanger = loop.WarmExchanger,
            Precooler = loop.Precooler,
            Recuperator = loop.Recuperator!,
            Throttle = loop.Throttle!,
            Coil = loop.Coil!,
            ColdBox = One<ColdBoxPart>(machine),
            Vessel = One<VesselPart>(machine),
            Block = One<BlockPart>(machine),
            Feed = One<FeedPart>(machine),
            Flask = One<FlaskPart>(machine),
            Buffer = One<BufferPart>(machine),
            FeedPrecooled = product.IsPrecooled,
            LoopPath = loop.Path,
            ProductPath = product.Path,
        };
    }

    private static void CheckLoad(MachineDescription machine, List<LayoutRefusal> refusals)
    {
        var coil = One<CoilPart>(machine)!;
        var (vessel, block) = (One<VesselPart>(machine), One<BlockPart>(machine));
        if (vessel is null && block is null)
            refusals.Add(new(coil.FileLine, $"'{coil.Name}' has nothing to cool; a part of kind vessel or block is expected"));
        if (vessel is not null && block is not null)
            refusals.Add(new(block.FileLine, $"there is a vessel ('{vessel.Name}') and a block ('{block.Name}'); the solvers handle one load"));
    }

    private static void CheckUnused(MachineDescription machine, IReadOnlyList<PathStep> paths, IReadOnlyList<Line> aside, List<LayoutRefusal> refusals)
    {
        var used = paths.Select(s => s.Part.Name).ToHashSet(StringComparer.Ordinal);
        // Reliefs and the valves in front of them hang on a line; they only need to be joined to something.
        var joined = machine.Lines.SelectMany(l => new[] { Ports.PartName(l.From), Ports.PartName(l.To) }).ToHashSet(StringComparer.Ordinal);
        foreach (var part in machine.Parts)
        {
            if (part is ColdBoxPart or BlockPart or BufferPart || used.Contains(part.Name)) continue;
            if (part is ReliefPart or ValvePart && joined.Contains(part.Name)) continue;
            if (part is VesselPart && !joined.Contains(part.Name) && One<FeedPart>(machine) is null) continue;
            refusals.Add(new(part.FileLine, $"'{part.Name}' ({PartWords.KindOf(part).Word}) lies on no path the solvers follow; join it by a line or take it out"));
        }
        var walked = paths.Where(s => s.Line is not null).Select(s => s.Line!).ToHashSet(ReferenceEqualityComparer.Instance);
        walked.UnionWith(aside);
        foreach (var line in machine.Lines.Where(l => !walked.Contains(l)))
        {
            if (machine.Parts.First(p => p.Name == Ports.PartName(line.To)) is ReliefPart or ValvePart) continue;
            refusals.Add(new(line.FileLine, $"the line from '{line.From}' to '{line.To}' lies on no path the solvers follow"));
        }
    }

    private static T? One<T>(MachineDescription machine) where T : Part => machine.PartsOf<T>().FirstOrDefault();

    private static string Names(IEnumerable<Part> parts) => string.Join(", ", parts.Select(p => p.Name));
}
