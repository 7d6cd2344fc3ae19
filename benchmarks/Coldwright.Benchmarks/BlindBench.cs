using System.Diagnostics;
using System.Globalization;
using System.Text;
using Coldwright.Blind;
using Coldwright.Blind.Physics;
using Coldwright.Machine.Files;
using Coldwright.Numerics;
using Coldwright.Runs;
using Coldwright.Runs.Explain;

namespace Coldwright.Benchmarks;

/// <summary>Explains logs of machines that another model made, with faults it does not know of, and counts how often it is right: docs/theory/explain.md.</summary>
internal static class BlindBench
{
    private const double Weighty = 0.2;

    private sealed record Outcome(BlindCase Case, Explanation? Answer, string[] Hidden, bool Right, bool InSet, double Seconds, string Trouble);

    public static int Run(int seed, int cases, string sensors, bool verbose)
    {
        var set = sensors switch { "full" => SensorSet.Full, "bare" => SensorSet.Bare, "usual" => SensorSet.Usual, _ => throw new ArgumentException($"--sensors: '{sensors}' is none of full, usual, bare") };
        var folder = MachineFolderReader.ReadTexts(BlindMachine.Yaml);
        if (!folder.IsGood) throw new InvalidOperationException(folder.Problems[0].ToString());
        var watch = Stopwatch.StartNew();
        Dictionary<int, BlindCase> made = [];
        var making = Task.Run(() => { for (int i = 0; i < cases; i++) { var c = CaseMaker.Make(seed, i); lock (made) made[i] = c; } });
        var runs = ModelRuns.Make(folder.Machine!, folder.Layout!, BlindMarch.StopS, 2.5 * (BlindMarch.EndS - BlindMarch.StopS) + 600);
        foreach (var f in runs.Failed) Console.WriteLine($"no run of the model for {f}");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seed {seed}, {cases} cases, {sensors} sensors; runs of the model {watch.Elapsed.TotalSeconds:0} s"));
        var all = new List<Outcome>();
        making.Wait();
        for (int i = 0; i < cases; i++)
        {
            var outcome = One(made[i], seed, set, folder, runs);
            all.Add(outcome);
            if (verbose || !outcome.Right) Console.WriteLine(Line(outcome));
        }
        Table(all, set);
        return 0;
    }

    private static Outcome One(BlindCase c, int seed, SensorSet set, MachineFolder folder, ModelRuns runs)
    {
        var (run, log) = LogWriter.Write(c, set, seed);
        if (Environment.GetEnvironmentVariable("BLIND_KEEP") is { Length: > 0 } keep)
        {
            var dir = Directory.CreateDirectory(Path.Combine(keep, $"{seed}-{c.Number}-{set}")).FullName;
            File.WriteAllText(Path.Combine(dir, "run.yaml"), run);
            File.WriteAllText(Path.Combine(dir, "log.csv"), log);
        }
        string[] hidden = [.. c.Truth.Faults.Where(f => c.Worth[f.Id] > Weighty).Select(f => f.Id)];
        var watch = Stopwatch.StartNew();
        try
        {
            var read = RunImporter.ReadTexts(run, set == SensorSet.Bare ? null : Encoding.UTF8.GetBytes(log));
            if (read.Record is not { } record) throw new InvalidOperationException(string.Join("; ", read.Problems));
            var answer = Explainer.Explain(record with { Machine = folder.Machine }, folder.Layout!, runs);
            int k = c.Truth.Faults.Count;
            var first = answer.Causes.Take(Math.Max(1, k)).Select(x => x.Id).ToArray();
            bool right = k == 0 ? first[0] == "none" : hidden.All(h => first.Contains(h));
            bool tied = k > 0 && hidden.All(h => first.Contains(h) || answer.Indistinguishable.Any(g => g.Contains(h) && g.Any(first.Contains)));
            right |= tied;
            bool inSet = right || (k > 0 && hidden.All(h => first.Contains(h) || answer.Indistinguishable.Any(g => g.Count <= 3 && g.Contains(h))));
            return new Outcome(c, answer, hidden, right, inSet, watch.Elapsed.TotalSeconds, "");
        }
        catch (SolveException e)
        {
            return new Outcome(c, null, hidden, false, false, watch.Elapsed.TotalSeconds, e.Report.Advice);
        }
    }

    private static string Line(Outcome o)
    {
        var ci = CultureInfo.InvariantCulture;
        string truth = o.Case.Truth.Faults.Count == 0 ? "none" : string.Join(" + ", o.Case.Truth.Faults.Select(f => string.Create(ci, $"{f.Id} {f.Size:0.###} ({100 * o.Case.Worth[f.Id]:0} %)")));
        string said = o.Answer is null ? o.Trouble : string.Join(", ", o.Answer.Causes.Take(4).Select(x => string.Create(ci, $"{(x.Named ? "*" : "")}{x.Id}{(x.Detail.Length > 0 ? ":" + x.Detail : "")} {x.Value:0.##} p{x.Probability:0.00}")));
        string end = o.Answer is null ? "" : string.Create(ci, $" [{o.Answer.End.MeasuredK:0} K, file {o.Answer.End.DescribedK:0} K, misfit {o.Answer.Misfit:0.00}, {o.Seconds:0.0} s]");
        return $"{(o.Right ? "  " : o.InSet ? "~ " : "x ")}{o.Case.Number,3}  {truth}  ->  {said}{end}";
    }

    private static void Table(List<Outcome> all, SensorSet set)
    {
        var ci = CultureInfo.InvariantCulture;
        Console.WriteLine(string.Create(ci, $"right {all.Count(o => o.Right)} of {all.Count} ({100.0 * all.Count(o => o.Right) / all.Count:0} %), truth within a named set of at most three {100.0 * all.Count(o => o.InSet) / all.Count:0} %"));
        foreach (var group in all.GroupBy(o => o.Case.Truth.Faults.Count).OrderBy(g => g.Key)) Console.WriteLine(string.Create(ci, $"  {group.Key} faults: {group.Count(o => o.Right)} of {group.Count()}"));
        foreach (var group in all.SelectMany(o => o.Hidden.Select(h => (h, o))).GroupBy(x => x.h).OrderBy(g => g.Key, StringComparer.Ordinal))
            Console.WriteLine(string.Create(ci, $"  {group.Key,-20} named {group.Count(x => x.o.Answer?.Causes.Take(x.o.Case.Truth.Faults.Count).Any(y => y.Id == group.Key) == true)} of {group.Count()}"));
        int inside = 0, total = 0;
        foreach (var o in all.Where(o => o.Answer is not null))
            foreach (var c in o.Answer!.Causes)
                if (TrueValue(o.Case.Truth, c) is { } v)
                {
                    total++;
                    if (v >= c.Low && v <= c.High) inside++;
                }
        Console.WriteLine(string.Create(ci, $"intervals of 90 % hold the true value: {inside} of {total} ({100.0 * inside / Math.Max(1, total):0} %)"));
        Console.WriteLine(string.Create(ci, $"seconds a case: median {all.Select(o => o.Seconds).Order().ElementAt(all.Count / 2):0.0}, most {all.Max(o => o.Seconds):0.0}"));
    }

    private static double? TrueValue(Truth t, ExplainedCause c) => c.Id switch
    {
        "leak" => t.Leak * t.Of("leak", 1) * (1 + 5.5 * t.Of("wet-insulation", 0)),
        "compressor-flow" => t.Compressor * t.Of("compressor-flow", 1),
        "extra-metal" => t.LoadMass + t.Of("extra-metal", 0) / 1.52,
        "light-gas-lost" => 1 - (1 - t.Of("light-gas-lost", 0)) * t.Charge[0],
        "heavy-held-up" => 1 - (1 - t.Of("heavy-held-up", 0)) * t.Charge[^1],
        "sensor-offset" when c.Detail == "vessel" => t.Of("sensor-offset", 0),
        "cold-junction" => t.Of("cold-junction", 0),
        "wet-insulation" => t.Of("wet-insulation", 0),
        _ => null,
    };
}
