using System.Diagnostics;
using System.Globalization;
using System.Text;
using Coldwright.Benchmarks.Oracle;
using Coldwright.Blind;
using Coldwright.Blind.SecondHand;
using Coldwright.Machine.Files;
using Coldwright.Numerics;
using Coldwright.Runs;
using Coldwright.Runs.Explain;
using Coldwright.Runs.Record;

namespace Coldwright.Benchmarks;

/// <summary>Explains logs of machines that another model made, with faults it does not know of, and counts how often it is right: docs/theory/explain.md.</summary>
internal static class BlindBench
{
    /// <summary>Runs the cases of a seed.</summary>
    /// <param name="handName">first or second.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="cases">Number of cases.</param>
    /// <param name="sensors">full, usual, bare or all.</param>
    /// <param name="against">True: each run is held against a day of the same machine without its faults.</param>
    /// <param name="oracle">True: instead of explaining, the score of an explainer that knows the generator itself.</param>
    /// <param name="verbose">True: a line for every case, not only for the wrong ones.</param>
    public static int Run(string handName, int seed, int cases, string sensors, bool against, bool oracle, bool verbose)
    {
        SensorSet[] sets = sensors switch
        {
            "full" => [SensorSet.Full],
            "usual" => [SensorSet.Usual],
            "bare" => [SensorSet.Bare],
            "all" => [SensorSet.Full, SensorSet.Usual, SensorSet.Bare],
            _ => throw new ArgumentException($"--sensors: '{sensors}' is none of full, usual, bare, all"),
        };
        IBlindHand hand = handName switch
        {
            "first" => new FirstHand(seed),
            "second" => new OtherHand(seed),
            _ => throw new ArgumentException($"--hand: '{handName}' is none of first, second"),
        };
        var folder = MachineFolderReader.ReadTexts(BlindMachine.Yaml);
        if (!folder.IsGood) throw new InvalidOperationException(folder.Problems[0].ToString());
        if (oracle)
        {
            if (hand is not FirstHand) throw new ArgumentException("--oracle knows the first hand alone");
            OracleBench.Run(folder, [.. Enumerable.Range(0, cases).AsParallel().AsOrdered().WithDegreeOfParallelism(2).Select(i => (seed, CaseMaker.Make(seed, i)))], sets, verbose);
            return 0;
        }
        var made = new BlindCase[cases];
        var sound = new BlindCase[cases];
        var making = Task.Run(() =>
        {
            for (int i = 0; i < cases; i++)
            {
                made[i] = hand.Make(i);
                if (against) sound[i] = hand.Again(made[i], made[i].Truth with { Faults = [] });
            }
        });
        var runs = ModelRuns.Make(folder.Machine!, folder.Layout!, hand.StopS, 2.5 * (hand.EndS - hand.StopS) + 600);
        foreach (var f in runs.Failed) Console.WriteLine($"no run of the model for {f}");
        making.Wait();
        foreach (var set in sets)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{(handName == "first" ? "" : handName + " hand, ")}seed {seed}, {cases} cases, {set.ToString().ToLowerInvariant()} sensors{(against ? ", held against a good day" : "")}"));
            var all = new List<BlindOutcome>();
            foreach (var c in made)
            {
                var outcome = One(hand, c, against ? sound[c.Number] : null, set, folder, runs);
                all.Add(outcome);
                if (verbose || !outcome.IsPlainlyRight) Console.WriteLine(BlindTable.Line(outcome));
            }
            BlindTable.Write(all, hand, runs.Plain, against);
        }
        return 0;
    }

    private static RunRecord Read(IBlindHand hand, BlindCase c, SensorSet set, MachineFolder folder, int day)
    {
        var (run, log) = hand.Write(c, set, day);
        var read = RunImporter.ReadTexts(run, log.Length == 0 ? null : Encoding.UTF8.GetBytes(log));
        return read.Record is { } record ? record with { Machine = folder.Machine } : throw new RunProblemException(string.Join("; ", read.Problems));
    }

    private static BlindOutcome One(IBlindHand hand, BlindCase c, BlindCase? sound, SensorSet set, MachineFolder folder, ModelRuns runs)
    {
        var from = Process.GetCurrentProcess().TotalProcessorTime;
        double Seconds() => (Process.GetCurrentProcess().TotalProcessorTime - from).TotalSeconds;
        try
        {
            var record = Read(hand, c, set, folder, 0);
            var outcome = new BlindOutcome(c, Explainer.Explain(record, folder.Layout!, runs, follow: false, earlier: sound is null ? null : Read(hand, sound, set, folder, 1)), Seconds(), "");
            bool tied = !outcome.IsPlainlyRight && outcome.Claimed.Count > 0 && outcome.Claimed.All(x => x.Named.Length > 0 && BlindTie.Holds(hand, c, x.Fault, x.Named, set));
            return outcome with { TieHolds = tied };
        }
        catch (SolveException e)
        {
            return new BlindOutcome(c, null, Seconds(), e.Report.Advice);
        }
        catch (RunProblemException e)
        {
            return new BlindOutcome(c, null, Seconds(), e.Message);
        }
    }
}
