using Coldwright.Machine.Files;
using Coldwright.Runs;
using Coldwright.Runs.Record;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Cli.Commands;

/// <summary>Reads a run that is to be compared with its cooler: both must be good, and the cooler described closely enough to be followed in time.</summary>
internal static class RunFiles
{
    /// <summary>The record and its cooler.</summary>
    /// <exception cref="InputException">Something is wrong with either; every problem is named.</exception>
    public static (RunRecord Record, MachineFolder Cooler) Read(string directory, Faces faces)
    {
        RunFolder folder;
        using (new Progress(faces.Terminal, () => $"reading {directory}")) folder = RunImporter.Read(directory, faces.Terminal.Cancel);
        if (folder.Record is not { } record)
            throw new InputException("", folder.Problems.Select(p => p.Line > 0 ? $"{Path.Combine(folder.Directory, p.File)}:{p.Line}:{p.Column}: {p.Message}" : p.ToString()).ToArray(), "'import' reads the run alone and says what it finds");
        if (folder.Cooler is not { IsGood: true, Machine: not null, Layout: { } layout } cooler)
            throw new InputException(directory, [.. record.Warnings.Where(w => w.Contains("machine.yaml", StringComparison.Ordinal) || w.Contains("cooler", StringComparison.Ordinal)).DefaultIfEmpty("the run's cooler was not found")], "a run is compared with its cooler: machine.yaml two folders up, or where 'cooler:' in run.yaml says");
        if (record.Kind != RunKind.Run) throw new InputException(directory, "this record is a leak or proof test, not a run of the cooler", "'import' gives its answer");
        if (CooldownSolver.Missing(record.Machine!, layout) is { Count: > 0 } missing)
            throw new InputException(Path.Combine(cooler.Directory, "machine.yaml"), [.. missing.Select(m => $"add {m}")], "the run is compared with a cooler that is followed in time, so hardware and charge must be described");
        return (record, cooler);
    }
}
