namespace Coldwright.Fluids.Envelopes;

/// <summary>What a reader of an envelope must be told.</summary>
internal static class EnvelopeNotes
{
    public static IEnumerable<EnvelopeNote> Of(EnvelopeWindow window, Plane plane, PhaseProbe probe, BoundaryNetwork network,
        LineNaming naming, IReadOnlyList<CriticalPoint> critical, IReadOnlyList<BoundaryLine> lines)
    {
        var saturation = lines.Where(l => l.Kind is BoundaryKind.Bubble or BoundaryKind.Dew).SelectMany(l => l.Points).ToArray();
        if (saturation.Any(p => p.PressurePa > window.HighestPa * (1 - 1e-6)))
            yield return new EnvelopeNote("vapour and liquid still meet at ", null, window.HighestPa, ", the top of the window: the highest pressure of two phases lies above");
        if (lines.Count == 0) yield return "no change of phases was found inside the window";
        foreach (var lost in network.Lost)
            yield return EnvelopeNote.At("a line is interrupted at ", plane.Point(lost), ": beyond that the flashes gave no answer or no clear boundary");
        foreach (var end in network.Lines.Where(l => l.Points[0].IsJump && l.Points[0].A.Count > 1).SelectMany(Merged))
            yield return EnvelopeNote.At("the three-phase line ends at ", plane.Point(end), ", where two of its phases become one");
        foreach (var point in naming.ReadOff)
            yield return EnvelopeNote.At("bubble and dew line meet near ", point, "; the critical point there was read off the lines, not solved for");
        foreach (var point in naming.Touching)
            yield return EnvelopeNote.At("bubble and dew line touch near ", point, " (an azeotrope): the mixture boils there like a pure substance");
        foreach (var end in network.Dangling.Where(d => !naming.Met.Any(c => d.DistanceTo(plane.At(c.TemperatureK, c.PressurePa)) < 0.01)))
            yield return EnvelopeNote.At("a line ends at ", plane.Point(end), " and no other was found to go on from there");
        foreach (var point in critical.Where(c => c.Stable && !naming.Met.Contains(c)))
            if (Plane.Holds(plane.At(point.TemperatureK, point.PressurePa)))
                yield return EnvelopeNote.At("no traced line passes the critical point at ", new BoundaryPoint(point.TemperatureK, point.PressurePa), ": the lines leave a gap there");
        if (probe.Unsettled.Count > 0)
            yield return EnvelopeNote.At("near ", plane.Point(probe.Unsettled[0]), " neighbouring states have different phases without a clear line between them: lines there may be missing");
        if (network.WidestPoint > 100 * BoundarySearch.Tolerance)
            yield return FormattableString.Invariant($"where flashes gave no answer, points are known only to within {network.WidestPoint * (window.WarmestK!.Value - window.ColdestK!.Value):0.00} K");
        if (probe.Failures > 0.01 * probe.Calls)
            yield return FormattableString.Invariant($"{probe.Failures} of {probe.Calls} states had no answer, as happens where the equations are far outside their range; lines that enter such a part stop there");
    }

    private static IEnumerable<Place> Merged(TracedLine line)
    {
        if (line.First == LineEnd.Merged) yield return line.Points[0].At;
        if (line.Last == LineEnd.Merged) yield return line.Points[^1].At;
    }
}
