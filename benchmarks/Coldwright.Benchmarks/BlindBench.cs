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
    /// <summary>Runs the cases of a seed.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="cases">Number of cases.</param>
    /// <param name="sensors">full, usual, bare or all.</param>
    /// <param name="verbose">True: a line for every case, not only for the wrong ones.</param>
    public static int Run(int seed, int cases, string sensors, bool verbose)
    {
        SensorSet[] sets = sensors switch
        {
            "full" => [SensorSet.Full], "usual" => [SensorSet.Usual], "bare" => [SensorSet.Bare], "all" => [SensorSet.Full, SensorSet.Usual, SensorSet.Bare],
            _ => throw new ArgumentException($"--sensors: '{sensors}' is none of full, usual, bare, all"),
        };
        var folder = MachineFolderReader.ReadTexts(BlindMachine.Yaml);
        if (!folder.IsGood) throw new InvalidOperationException(folder.Problems[0].ToString());
        var made = new BlindCase[cases];
        var making = Task.Run(() =>
        {
            for (int i = 0; i < cases; i++) made[i] = CaseMaker.Make(seed, i);
        });
        var runs = ModelRuns.Make(folder.Machine!, folder.Layout!, BlindMarch.StopS, 2.5 * (BlindMarch.EndS - BlindMarch.StopS) + 600);
        foreach (var f in runs.Failed) Console.WriteLine($"no run of the model for {f}");
        making.Wait();
        foreach (var set in sets)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seed {seed}, {cases} cases, {set.ToString().ToLowerInvariant()} sensors"));
            var all = new List<BlindOutcome>();
            foreach (var c in made)
            {
                var outcome = One(c, seed, set, folder, runs);
                all.Add(outcome);
                if (verbose || !outcome.IsPlainlyRight) Console.WriteLine(BlindTable.Line(outcome));
            }
            BlindTable.Write(all, runs.Plain);
        }
        return 0;
    }

    private static BlindOutcome One(BlindCase c, int seed, SensorSet set, MachineFolder folder, ModelRuns runs)
    {
        var (run, log) = LogWriter.Write(c, set, seed);
        if (Environment.GetEnvironmentVariable("BLIND_KEEP") is { Length: > 0 } keep)
        {
            var dir = Directory.CreateDirectory(Path.Combine(keep, $"{seed}-{c.Number}-{set}")).FullName;
            File.WriteAllText(Path.Combine(dir, "run.yaml"), run);
            File.WriteAllText(Path.Combine(dir, "log.csv"), log);
        }
        var from = Process.GetCurrentProcess().TotalProcessorTime;
        double Seconds() => (Process.GetCurrentProcess().TotalProcessorTime - from).TotalSeconds;
        try
        {
            var read = RunImporter.ReadTexts(run, set == SensorSet.Bare ? null : Encoding.UTF8.GetBytes(log));
            if (read.Record is not { } record) throw new InvalidOperationException(string.Join("; ", read.Problems));
            var outcome = new BlindOutcome(c, Explainer.Explain(record with { Machine = folder.Machine }, folder.Layout!, runs, follow: false), Seconds(), "");
            bool tied = !outcome.IsPlainlyRight && outcome.Claimed.Count > 0 && outcome.Claimed.All(x => x.Named.Length > 0 && BlindTie.Holds(c, x.Fault, x.Named, set));
            return outcome with { TieHolds = tied };
        }
        catch (SolveException e)
        {
            return new BlindOutcome(c, null, Seconds(), e.Report.Advice);
        }
    }
}
