using System.Globalization;
using System.Text;
using Coldwright.Blind;
using Coldwright.Blind.Physics;
using Coldwright.Machine.Files;
using Coldwright.Runs;
using Coldwright.Runs.Explain;
using Coldwright.Runs.Identifiability;

namespace Coldwright.Benchmarks;

/// <summary>Prints the tables of docs/theory/identifiability.md: what three sensor sets can tell of each cause, with and without a warm-up.</summary>
internal static class IdentifyTable
{
    public static int Run()
    {
        var folder = MachineFolderReader.ReadTexts(BlindMachine.Yaml);
        Write(folder, ModelRuns.Make(folder.Machine!, folder.Layout!, BlindMarch.StopS, 2.5 * (BlindMarch.EndS - BlindMarch.StopS) + 600));
        return 0;
    }

    /// <summary>The tables from runs of the blind machine.</summary>
    public static void Write(MachineFolder folder, ModelRuns runs)
    {
        var sound = CaseMaker.Of(0, new Truth { Faults = [] });
        var columns = new List<(string Name, IReadOnlyList<IdentifiedCause> Causes)>();
        foreach (var set in new[] { SensorSet.Bare, SensorSet.Usual, SensorSet.Full })
            foreach (double until in new[] { BlindMarch.StopS - 30, BlindMarch.EndS })
            {
                var (run, log) = LogWriter.Write(sound, set, 1, until);
                var record = RunImporter.ReadTexts(run, set == SensorSet.Bare ? null : Encoding.UTF8.GetBytes(log)).Record! with { Machine = folder.Machine };
                columns.Add((set.ToString().ToLowerInvariant() + (until < BlindMarch.EndS ? "" : " + warm-up"), IdentifiabilityStudy.Of(record, folder.Layout!, runs)));
            }
        var ids = columns[^1].Causes.Select(c => c.Id).Distinct().ToArray();
        Console.WriteLine($"| cause | {string.Join(" | ", columns.Select(c => c.Name))} |");
        Console.WriteLine($"| --- | {string.Join(" | ", columns.Select(_ => "---"))} |");
        foreach (string id in ids) Console.WriteLine($"| `{id}` | {string.Join(" | ", columns.Select(c => Cell(c.Causes, id)))} |");
        foreach (var (name, causes) in columns)
        {
            Console.WriteLine($"\n{name}:\n");
            foreach (var c in causes.Where(c => c.LookAlikes.Count > 0).GroupBy(c => c.Id)) Console.WriteLine($"- `{c.Key}` may be {string.Join(", ", c.SelectMany(x => x.LookAlikes).Distinct().Select(x => $"`{x}`"))}");
        }
    }

    private static string Cell(IReadOnlyList<IdentifiedCause> causes, string id)
    {
        var of = causes.Where(c => c.Id == id).ToArray();
        return of.Length == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{of.Max(c => c.Alone):0.0} / {of.Max(c => c.AmongAll):0.0}");
    }
}
