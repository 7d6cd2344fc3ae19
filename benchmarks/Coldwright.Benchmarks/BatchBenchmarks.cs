using Coldwright.Machine.Files;
using Coldwright.Simulation.Batch;
using Coldwright.Simulation.Rating;

namespace Coldwright.Benchmarks;

/// <summary>A whole batch of the main example: rating between given pressures, tables, search of the schedule, what waiting is worth.</summary>
internal static class BatchBenchmarks
{
    public static IEnumerable<Row> Rows()
    {
        var dir = new DirectoryInfo(AppContext.BaseDirectory);
        while (dir is not null && !Directory.Exists(Path.Combine(dir.FullName, "examples", "workshop"))) dir = dir.Parent;
        var folder = MachineFolderReader.Read(Path.Combine(dir?.FullName ?? ".", "examples", "workshop"));
        if (!folder.IsGood) throw new InvalidOperationException(string.Join("\n", folder.Problems));
        yield return Row.Of("batch/whole", () => BatchSimulation.Run(folder.Machine!, folder.Layout!, folder.Shop, new RatingOptions { Model = RatingModel.Reference }, new BatchOptions()));
    }
}
