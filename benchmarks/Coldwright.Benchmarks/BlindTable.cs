using System.Globalization;
using Coldwright.Blind;
using Coldwright.Runs.Explain;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Benchmarks;

/// <summary>The score of a blind run, line by line.</summary>
internal static class BlindTable
{
    private static readonly CultureInfo _ci = CultureInfo.InvariantCulture;

    /// <summary>A case in a line: what was hidden, what was said.</summary>
    public static string Line(BlindOutcome o)
    {
        string truth = o.Case.Truth.Faults.Count == 0 ? "none" : string.Join(" + ", o.Case.Truth.Faults.Select(f => string.Create(_ci, $"{f.Id} {f.Size:0.###} ({100 * o.Case.Worth[f.Id]:0} %)")));
        string said = o.Answer is null ? o.Trouble : string.Join(", ", o.Answer.Causes.Take(4).Select(x => string.Create(_ci, $"{(x.Named ? "*" : "")}{x.Id}{(x.Detail.Length > 0 ? ":" + x.Detail : "")} {x.Value:0.##} p{x.Probability:0.00}")));
        string end = o.Answer is null ? "" : string.Create(_ci, $" [{o.Answer.End.MeasuredK:0} K, file {o.Answer.End.DescribedK:0} K, misfit {o.Answer.Misfit:0.00}]");
        return $"{(o.IsPlainlyRight ? "  " : o.TieHolds ? "= " : o.IsInSet ? "~ " : "x ")}{o.Case.Number,3}  {truth}  ->  {said}{end}";
    }

    /// <summary>The whole table.</summary>
    /// <param name="all">The cases.</param>
    /// <param name="hand">Who made them.</param>
    /// <param name="plain">The machine as described, by the program's model: a leak is compared in watts, since another hand's sound box leaks otherwise.</param>
    /// <param name="against">True: figures are ratios to the good day the run was held against.</param>
    public static void Write(IReadOnlyList<BlindOutcome> all, IBlindHand hand, Course plain, bool against)
    {
        string Part(int n, int of) => string.Create(_ci, $"{n} of {of} ({100.0 * n / Math.Max(1, of):0} %)");
        Console.WriteLine($"right {Part(all.Count(o => o.IsRight), all.Count)}, of these by a tie that holds {all.Count(o => o.TieHolds)}; truth among the first named or in a named set of at most three {Part(all.Count(o => o.IsInSet), all.Count)}");
        foreach (var group in all.GroupBy(o => o.Hidden.Length).OrderBy(g => g.Key)) Console.WriteLine($"  {group.Key} to find: {Part(group.Count(o => o.IsRight), group.Count())}");
        foreach (var group in all.SelectMany(o => o.Hidden.DefaultIfEmpty("none").Select(h => (h, o))).GroupBy(x => x.h).OrderBy(g => g.Key, StringComparer.Ordinal))
            Console.WriteLine($"  {group.Key,-20} {Part(group.Count(x => x.o.First.Contains(group.Key)), group.Count())}");
        Console.WriteLine("  named though not there: " + string.Join(", ", all.Where(o => o.Answer is not null).SelectMany(o => o.Answer!.Causes.Where(c => c.Named && c.Id != "none" && o.Case.Truth.Faults.All(f => f.Id != c.Id)).Select(c => c.Id)).GroupBy(x => x).OrderByDescending(g => g.Count()).Select(g => $"{g.Key} {g.Count()}").DefaultIfEmpty("nothing")));
        double describedW = plain.LeakW[plain.TimeS.Select((t, i) => (t, i)).Last(x => x.t <= hand.StopS).i];
        var held = all.Where(o => o.Answer is not null).SelectMany(o => o.Answer!.Causes.Select(c => (Cause: c, True: TrueValue(o, c, hand, plain.StopK, describedW, against)))).Where(x => x.True is not null).Select(x => (x.Cause.Id, Holds: x.True >= x.Cause.Low && x.True <= x.Cause.High)).ToArray();
        Console.WriteLine($"intervals of 90 % hold the true value: {Part(held.Count(x => x.Holds), held.Length)}; {string.Join(", ", held.GroupBy(x => x.Id).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => $"{g.Key} {g.Count(x => x.Holds)} of {g.Count()}"))}");
        Console.WriteLine(string.Create(_ci, $"processor seconds a case: median {all.Select(o => o.Seconds).Order().ElementAt(all.Count / 2):0.0}, most {all.Max(o => o.Seconds):0.0}"));
    }

    private static double? TrueValue(BlindOutcome o, ExplainedCause c, IBlindHand hand, double loadK, double describedW, bool against)
    {
        var t = o.Case.Truth;
        // held against a good day, what the file has wrong is common to both
        double Unless(double scatter) => against ? 1 : scatter;
        return c.Id switch
        {
            // where water is named the leak is what is left without it
            "leak" => Unless(hand.SettledLeakW(t with { Faults = [] }, loadK) / describedW) * t.Of("leak", 1) * (o.Answer!.Causes.Any(x => x is { Id: "wet-insulation", Named: true }) ? 1 : hand.WetFactor(t.Of("wet-insulation", 0))),
            "compressor-flow" => Unless(t.Compressor) * t.Of("compressor-flow", 1),
            "extra-metal" => Unless(t.LoadMass) * (1 + t.Of("extra-metal", 0) / 1.52 / t.LoadMass),
            "light-gas-lost" => 1 - (1 - t.Of("light-gas-lost", 0)) * Unless(t.Charge[0]),
            "heavy-held-up" => 1 - (1 - t.Of("heavy-held-up", 0)) * Unless(t.Charge[^1]),
            "sensor-offset" when c.Detail == "vessel" => t.Of("sensor-offset", 0),
            "cold-junction" => t.Of("cold-junction", 0),
            "wet-insulation" => t.Of("wet-insulation", 0),
            _ => null,
        };
    }
}
