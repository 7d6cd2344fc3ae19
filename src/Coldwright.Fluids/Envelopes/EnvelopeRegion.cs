namespace Coldwright.Fluids.Envelopes;

/// <summary>A region of the picture and a place well inside it.</summary>
/// <param name="Phases">In words: <c>liquid</c>, <c>vapour + liquid</c>, <c>two liquids</c>.</param>
/// <param name="Inside">A state in it, as far from every line as the first scan knows.</param>
/// <param name="Room">Distance from there to the next line, in units of the window.</param>
public sealed record EnvelopeRegion(string Phases, BoundaryPoint Inside, double Room);

/// <summary>Names the regions between the lines from the states of the first scan.</summary>
internal static class Regions
{
    public static IReadOnlyList<EnvelopeRegion> Of(IEnumerable<Sample> samples, IReadOnlyList<TracedLine> lines, Plane plane)
    {
        var best = new Dictionary<string, (Place At, double Room)>();
        foreach (var sample in samples)
        {
            if (Name(sample) is not { } name) continue;
            double room = new[] { sample.At.X, 1 - sample.At.X, sample.At.Y, 1 - sample.At.Y }.Min();
            double known = best.TryGetValue(name, out var b) ? b.Room : 0;
            foreach (var line in lines)
                for (int i = 1; i < line.Points.Count && room > known; i++) room = Math.Min(room, sample.At.DistanceTo(line.Points[i - 1].At, line.Points[i].At));
            if (room > known) best[name] = (sample.At, room);
        }
        return [.. best.Select(b => new EnvelopeRegion(b.Key, plane.Point(b.Value.At), b.Value.Room)).OrderByDescending(r => r.Room)];
    }

    // a dense single phase above its critical temperature is neither liquid nor vapour: it has no name
    private static string? Name(Sample s) => (s.Count, s.Phases[0].IsGas) switch
    {
        (1, true) => s.Phases[0].ReducedDensity < 0.5 ? "vapour" : null,
        (1, false) => "liquid",
        (2, true) => "vapour + liquid",
        (2, false) => "two liquids",
        (3, true) => "vapour + two liquids",
        (3, false) => "three liquids",
        _ => null,
    };
}
