using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.Freezing;
using Coldwright.Numerics;

namespace Coldwright.Fluids.Envelopes;

/// <summary>The first solid on cooling, pressure by pressure, as lines: one for each stretch on which the same component freezes first.</summary>
internal static class FreezingLines
{
    private const int Pressures = 17, Between = 5;

    // neighbours further apart than this get others between them
    private const double WideK = 3;

    private sealed record Answer(double PressurePa, FreezingPoint? Point, EnvelopeNote? Failure, IReadOnlyList<string> Told);

    public static IReadOnlyList<BoundaryLine> Find(HelmholtzModel model, double[] z, EnvelopeWindow window, CancellationToken cancel, List<EnvelopeNote> notes)
    {
        Answer[] Ask(double[] pressures)
        {
            var answers = new Answer[pressures.Length];
            Parallel.For(0, pressures.Length, new ParallelOptions { CancellationToken = cancel }, k => answers[k] = At(model, z, pressures[k], window.ColdestK!.Value));
            return answers;
        }
        double[] Spread(double low, double high, int count) => [.. Enumerable.Range(0, count).Select(k => low * Math.Pow(high / low, k / (count - 1.0)))];

        var first = Ask(Spread(window.LowestPa, window.HighestPa, Pressures));
        var more = Ask([.. first.Zip(first.Skip(1)).Where(n => IsWide(n.First, n.Second)).SelectMany(n => Spread(n.First.PressurePa, n.Second.PressurePa, Between + 2)[1..^1])]);
        Answer[] all = [.. first.Concat(more).OrderBy(a => a.PressurePa)];
        notes.AddRange(all.Select(a => a.Failure).OfType<EnvelopeNote>());
        notes.AddRange(all.SelectMany(a => a.Told).Except(model.Warnings).Distinct().Select(t => (EnvelopeNote)t));
        return Lines(all);
    }

    private static Answer At(HelmholtzModel model, double[] z, double pressurePa, double coldestK)
    {
        var freezing = new FreezingModel(model);
        FreezingPoint? point = null;
        EnvelopeNote? failure = null;
        try
        {
            point = freezing.FreezingTemperature(pressurePa, z, coldestK);
        }
        catch (SolveException e)
        {
            failure = new EnvelopeNote("the freezing line has a gap at ", null, pressurePa, $": {e.Report.Advice}");
        }
        return new Answer(pressurePa, point, failure, freezing.Warnings);
    }

    private static bool IsWide(Answer a, Answer b) =>
        a.Failure is null && b.Failure is null && (a.Point is null != b.Point is null || a.Point is { } p && b.Point is { } q && (Math.Abs(p.TemperatureK - q.TemperatureK) > WideK || p.Component != q.Component));

    private static List<BoundaryLine> Lines(Answer[] found)
    {
        var lines = new List<BoundaryLine>();
        for (int k = 0; k < found.Length; k++)
        {
            if (found[k].Point is not { } point) continue;
            var here = new BoundaryPoint(point.TemperatureK, point.PressurePa);
            string between = $"fluid | solid {point.Component}";
            bool goesOn = k > 0 && found[k - 1].Point is not null;
            if (goesOn && lines[^1].Between == between) lines[^1] = lines[^1] with { Points = [.. lines[^1].Points, here] };
            // the next component takes over where the last one stopped
            else lines.Add(new BoundaryLine(BoundaryKind.Freezing, goesOn ? [lines[^1].Points[^1], here] : [here], between));
        }
        return [.. lines.Where(l => l.Points.Count > 1)];
    }
}
