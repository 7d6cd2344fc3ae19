namespace Coldwright.Fluids.Envelopes;

/// <summary>Makes one line of two pieces of the same kind where nothing else ends at the point they share.</summary>
internal static class LineChain
{
    public static IReadOnlyList<BoundaryLine> Join(IReadOnlyList<BoundaryLine> pieces)
    {
        var lines = pieces.ToList();
        for (int i = 0; i < lines.Count; i++)
            for (int j = i + 1; j < lines.Count; j++)
            {
                var (a, b) = (lines[i], lines[j]);
                if (a.Kind != b.Kind || a.Between != b.Between || Shared(a, b) is not { } at || lines.Sum(l => Ends(l, at)) != 2) continue;
                var first = a.Points[^1] == at ? a.Points : a.Points.Reverse();
                var second = b.Points[0] == at ? b.Points : b.Points.Reverse();
                lines[i] = a with { Points = [.. first, .. second.Skip(1)] };
                lines.RemoveAt(j);
                // the longer line may go on from its new end
                j = i;
            }
        return lines;
    }

    private static BoundaryPoint? Shared(BoundaryLine a, BoundaryLine b)
    {
        foreach (var end in (BoundaryPoint[])[a.Points[^1], a.Points[0]])
            if (end == b.Points[0] || end == b.Points[^1]) return end;
        return null;
    }

    private static int Ends(BoundaryLine line, BoundaryPoint at) => (line.Points[0] == at ? 1 : 0) + (line.Points[^1] == at ? 1 : 0);
}
