using System.Diagnostics;
using System.Globalization;
using Coldwright.Blind;
using Coldwright.Machine.Files;

namespace Coldwright.Benchmarks.Oracle;

/// <summary>How good an explainer could be that knows the generator itself: docs/theory/explain.md.</summary>
internal static class OracleBench
{
    private const double Weighty = 0.2;

    /// <summary>Scores the oracle on cases of seeds, with each set of sensors.</summary>
    public static void Run(MachineFolder folder, IReadOnlyList<(int Seed, BlindCase Case)> cases, SensorSet[] sets, bool verbose)
    {
        var ci = CultureInfo.InvariantCulture;
        var runs = OracleRuns.Make();
        foreach (var set in sets)
        {
            var judge = new OracleSight(runs, set, folder) is var sight ? new OracleJudge(sight) : null!;
            var all = cases.AsParallel().AsOrdered().WithDegreeOfParallelism(2).Select(x =>
            {
                var (run, log) = LogWriter.Write(x.Case, set, x.Seed);
                var named = judge.Name(sight.Read(run, log));
                string[] hidden = [.. x.Case.Truth.Faults.Where(f => x.Case.Worth[f.Id] > Weighty).Select(f => f.Id)];
                string[] first = [.. named.Take(Math.Max(1, hidden.Length))];
                return (x.Case, x.Seed, Hidden: hidden, First: first, Named: named, Right: hidden.Length == 0 ? first[0] == "none" : hidden.All(first.Contains));
            }).ToArray();
            foreach (var o in all)
                if (verbose && !o.Right) Console.WriteLine($"  {o.Seed}-{o.Case.Number,-3} {string.Join(" + ", o.Case.Truth.Faults.Select(f => string.Create(ci, $"{f.Id} {f.Size:0.###} ({100 * o.Case.Worth[f.Id]:0} %)")))} -> {string.Join(", ", o.Named)}");
            foreach (var seed in all.GroupBy(o => o.Seed))
                Console.WriteLine(string.Create(ci, $"oracle, seed {seed.Key}, {set.ToString().ToLowerInvariant()} sensors: right {seed.Count(o => o.Right)} of {seed.Count()} ({100.0 * seed.Count(o => o.Right) / seed.Count():0} %); among the first three {100.0 * seed.Count(o => o.Right || o.Hidden.Length > 0 && o.Hidden.All(o.Named.Contains)) / seed.Count():0} %"));
            Console.WriteLine("  " + string.Join(", ", all.SelectMany(o => o.Hidden.DefaultIfEmpty("none").Select(h => (h, o))).GroupBy(x => x.h).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => $"{g.Key} {g.Count(x => x.o.First.Contains(g.Key))}/{g.Count()}")));
        }
        Console.WriteLine(string.Create(ci, $"processor seconds: {Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds:0}"));
    }
}
