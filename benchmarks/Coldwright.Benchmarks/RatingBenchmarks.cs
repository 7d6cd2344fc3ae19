using Coldwright.Machine.Files;
using Coldwright.Simulation.Rating;

namespace Coldwright.Benchmarks;

/// <summary>The rating's row: the main example, all temperatures of the cooling curve, both models.</summary>
internal static class RatingBenchmarks
{
    public static IEnumerable<Row> Rows()
    {
        var dir = new DirectoryInfo(AppContext.BaseDirectory);
        while (dir is not null && !Directory.Exists(Path.Combine(dir.FullName, "examples", "workshop"))) dir = dir.Parent;
        var folder = MachineFolderReader.Read(Path.Combine(dir?.FullName ?? ".", "examples", "workshop"));
        if (!folder.IsGood) throw new InvalidOperationException(string.Join("\n", folder.Problems));
        yield return Row.Of("rate/given-pressures/reference", () => CoolerRating.Rate(folder.Machine!, folder.Layout!, folder.Shop!, new RatingOptions()));
    }
}
