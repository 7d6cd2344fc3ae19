using Coldwright.Fluids.EquationsOfState;

namespace Coldwright.Fluids.Envelopes;

/// <summary>
/// Traces every phase boundary of a mixture: each line is followed between certified flashes on either side of it, so that
/// retrograde parts, critical points, two liquids and three phases come out of the same walk and no point is a metastable
/// one. Where a line stops for another reason than the window's edge or a meeting with others, a note says so. See
/// docs/theory/envelope.md.
/// </summary>
public static class EnvelopeTracer
{
    /// <summary>Traces the envelope of a mixture of two or more components.</summary>
    /// <param name="model">The model.</param>
    /// <param name="z">Mole fractions, sum 1.</param>
    /// <param name="window">Where to look; null for the usual window.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">Fewer than two components are present.</exception>
    public static EnvelopeResult Trace(HelmholtzModel model, IReadOnlyList<double> z, EnvelopeWindow? window = null, CancellationToken cancel = default)
    {
        if (z.Count != model.Count) throw new ArgumentException($"{model.Count} mole fractions expected, got {z.Count}", nameof(z));
        if (z.Count(x => x > 0) < 2) throw new ArgumentException("a pure substance has a saturation line, not an envelope; use PureSaturation", nameof(z));
        double[] fractions = [.. z];
        var where = (window ?? new EnvelopeWindow()).For(model.Substances, fractions);
        var plane = new Plane(where);
        var probe = new PhaseProbe(model, fractions, plane, cancel);
        var network = new BoundaryNetwork(probe);
        network.Search(where.Scans);
        var critical = CriticalPointFinder.Find(model, fractions, cancel).ToArray();
        var naming = new LineNaming(plane, critical);
        var lines = LineChain.Join([.. naming.JoinToCritical(network.Lines.SelectMany(naming.Name).ToArray())]).OrderBy(l => l.Kind).ThenByDescending(l => l.Points.Count).ToArray();
        var freezingNotes = new List<EnvelopeNote>();
        var freezing = where.Freezing ? FreezingLines.Find(model, fractions, where, cancel, freezingNotes) : [];
        // a critical point is one where a bubble and a dew line meet, or where nothing else is
        critical = [.. critical.Select(c => c with { Stable = c.Stable && (naming.Met.Contains(c) || CriticalPointFinder.StandsAlone(model, fractions, c)) })];
        var saturation = lines.Where(l => l.Kind is BoundaryKind.Bubble or BoundaryKind.Dew).ToArray();
        return new EnvelopeResult
        {
            Window = where,
            Lines = [.. lines, .. freezing],
            CriticalPoints = [.. critical.Where(c => c.Stable || where.HiddenCriticalPoints).OrderByDescending(c => c.TemperatureK)],
            HighestPressure = Highest(saturation, p => Math.Log(p.PressurePa), p => p.PressurePa < where.HighestPa * (1 - 1e-6)),
            HighestTemperature = Highest(saturation, p => p.TemperatureK, p => p.TemperatureK < where.WarmestK!.Value * (1 - 1e-6)),
            Regions = Regions.Of(network.Samples, network.Lines, plane),
            Flashes = probe.Calls,
            Notes = [.. EnvelopeNotes.Of(where, plane, probe, network, naming, critical, lines), .. freezingNotes],
        };
    }

    private static BoundaryPoint? Highest(IReadOnlyList<BoundaryLine> lines, Func<BoundaryPoint, double> value, Func<BoundaryPoint, bool> inside)
    {
        if (lines.Count == 0) return null;
        var best = lines.Select(l => LineCurve.Highest(l.Points, value)).MaxBy(value);
        return inside(best) ? best : null;
    }
}
