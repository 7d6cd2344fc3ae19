using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Simulation.Rating;

namespace Coldwright.Benchmarks;

/// <summary>The ratings' rows: the main example between given pressures, all temperatures of the cooling curve, both models; and the loop closed from hardware and charge.</summary>
internal static class RatingBenchmarks
{
    public static IEnumerable<Row> Rows()
    {
        var dir = new DirectoryInfo(AppContext.BaseDirectory);
        while (dir is not null && !Directory.Exists(Path.Combine(dir.FullName, "examples", "workshop"))) dir = dir.Parent;
        MachineFolder Read(string example)
        {
            var read = MachineFolderReader.Read(Path.Combine(dir?.FullName ?? ".", "examples", example));
            return read.IsGood ? read : throw new InvalidOperationException(string.Join("\n", read.Problems));
        }

        var folder = Read("workshop");
        yield return Row.Of("rate/given-pressures/reference", () => CoolerRating.Rate(folder.Machine!, folder.Layout!, folder.Shop!, new RatingOptions()));
        var closed = Read("closed-loop");
        Row Closed(string name, RatingModel model, bool sensitivity) => Row.OfFive(name, () => CoolerRating.Rate(closed.Machine!, closed.Layout!, closed.Shop!, new RatingOptions { Model = model, Hold = HeldPressure.Neither, Sensitivity = sensitivity }));
        yield return Closed("rate/closed/reference", RatingModel.Reference, false);
        yield return Closed("rate/closed/cubic", RatingModel.Cubic, false);
        yield return Closed("rate/closed/cubic/sensitivity", RatingModel.Cubic, true);
    }
}
