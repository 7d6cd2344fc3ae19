using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>
/// The machine as it was found, followed as a whole: what is named, and what the record says of the doubts. The weighing adds up effects that were each found alone; together they may do more or less,
/// most of all where little cooling is to spare. So doubts and strengths are moved along the direction that moves the end of the pull-down most until the run ends where the record does, as far as they reasonably go.
/// </summary>
internal static class FittedMachine
{
    // of a doubt's own standard deviation, and of the direction's; kelvins that are near enough; runs at most. Our assumptions.
    private const double MostDoubt = 2, MostMove = 3, NearK = 1, LeastSlopeK = 0.2;
    private const int MostRuns = 4;

    /// <summary>The course and the causes as it takes them; the machine as described where none of its runs has an answer.</summary>
    public static (Course Course, IReadOnlyList<(CauseModel Cause, double Strength, double Step)> Taken) Follow(Comparison c, ModelRuns runs, Trace trace, FittedSet set)
    {
        int end = EndOf(c);
        var taken = Taken(c, runs, set, end);
        if (runs.With(Strengths(taken), cubic: false) is not { } course) return (runs.Plain, taken);
        if (end < 0 || taken.All(t => t.Step == 0)) return (course, taken);
        double aim = AimK(c, set, end), at = End(course, trace), move = 0, slope = SlopeK(c, set, taken, end);
        for (int i = 1; i < MostRuns && Math.Abs(at - aim) > NearK; i++)
        {
            double next = Math.Clamp(move + (aim - at) / Math.Max(slope, LeastSlopeK), -MostMove, MostMove);
            if (Math.Abs(next - move) < 0.05) break;
            var moved = Moved(taken, next);
            if (runs.With(Strengths(moved), cubic: false) is not { } tried) break;
            double then = End(tried, trace);
            slope = (then - at) / (next - move);
            // a step too far is not taken, but it tells how steep it is
            if (Math.Abs(then - aim) < Math.Abs(at - aim)) (move, at, course) = (next, then, tried);
        }
        return (course, Moved(taken, move));
    }

    /// <summary>Causes as the model takes them over, from the weighing alone.</summary>
    public static IReadOnlyList<(CauseModel Cause, double Strength, double Step)> Taken(Comparison c, ModelRuns runs, FittedSet set) => Taken(c, runs, set, EndOf(c));

    private static IReadOnlyList<(CauseModel Cause, double Strength, double Step)> Taken(Comparison c, ModelRuns runs, FittedSet set, int end)
    {
        var (mean, step) = new EvidenceFit(c).Doubts(set, end);
        var named = Judge.OfLoop(c, set);
        // the direction that moves the end most holds the doubts and what is uncertain of the strengths named, each by what it does to the end
        double doubts = end < 0 ? 0 : c.Shared.Select((s, i) => s.Shift[end] * step[i]).Sum();
        double Slope(CauseModel cause) => end < 0 ? 0 : set.Members.Select((m, i) => (S: c.Suspects[m], F: set.Strengths[i])).Where(x => x.S.Model == cause).Sum(x => x.S.Slopes(x.F) is var (a, b) ? a * x.S.First[end] + b * x.S.Second[end] : 0);
        double Sigma(CauseModel cause) => set.Members.Select((m, i) => (S: c.Suspects[m], Of: set.Sigma[i])).Where(x => x.S.Model == cause).Select(x => x.Of).DefaultIfEmpty(0).First();
        double all = Math.Sqrt(Math.Max(1e-12, doubts * doubts + named.Sum(x => Math.Pow(Sigma(x.Cause) * Slope(x.Cause), 2))));
        var list = new List<(CauseModel, double, double)>();
        foreach (var cause in runs.Causes)
        {
            int at = c.Shared.ToList().FindIndex(s => s.Name == cause.Id);
            // what changes the machine itself asks for property tables of its own: taken over where it is named, not for a doubt
            if (cause.Changed is not null && named.All(x => x.Cause.Id != cause.Id)) at = -1;
            double strength = named.Where(x => x.Cause.Id == cause.Id).Sum(x => x.Strength) + (at < 0 ? 0 : cause.Doubt * Math.Clamp(mean[at], -MostDoubt, MostDoubt));
            double move = (at < 0 ? 0 : cause.Doubt * step[at] * doubts / all) + (named.Any(x => x.Cause.Id == cause.Id) ? Math.Pow(Sigma(cause), 2) * Slope(cause) / all : 0);
            if (strength != 0 || move != 0) list.Add((cause, strength, move));
        }
        return list;
    }

    private static int EndOf(Comparison c) => c.Features.ToList().FindIndex(f => f.Kind == FeatureKind.AtEnd && f.What == Observable.Load);

    // where the load truly stood: less what a wrong sensor shows
    private static double AimK(Comparison c, FittedSet set, int end) =>
        c.Measured[end] - set.Members.Select((m, i) => c.Suspects[m].Model is null ? ExplanationBuilder.Change(c.Suspects[m], set.Strengths[i])[end] : 0).Sum();

    // kelvins of the end for one standard deviation along the direction, by the effects found alone
    private static double SlopeK(Comparison c, FittedSet set, IReadOnlyList<(CauseModel Cause, double Strength, double Step)> taken, int end) => taken.Sum(t =>
        set.Members.Select((m, i) => (S: c.Suspects[m], F: set.Strengths[i])).Where(x => x.S.Model == t.Cause).Select(x => x.S.Slopes(x.F) is var (a, b) ? a * x.S.First[end] + b * x.S.Second[end] : 0)
            .DefaultIfEmpty(t.Cause.Doubt > 0 && c.Shared.FirstOrDefault(s => s.Name == t.Cause.Id).Shift is { } shift ? shift[end] / t.Cause.Doubt : 0).First() * t.Step);

    private static double End(Course course, Trace trace) => FeatureReader.Value(ModelRuns.TraceOf(course, trace), new Feature(FeatureKind.AtEnd, Observable.Load, 1))!.Value;

    private static (CauseModel, double, double)[] Moved(IReadOnlyList<(CauseModel Cause, double Strength, double Step)> taken, double by) => [.. taken.Select(t => (t.Cause, t.Strength + by * t.Step, t.Step))];

    private static IReadOnlyList<(CauseModel, double)> Strengths(IReadOnlyList<(CauseModel Cause, double Strength, double Step)> taken) => [.. taken.Select(t => (t.Cause, t.Strength))];
}
