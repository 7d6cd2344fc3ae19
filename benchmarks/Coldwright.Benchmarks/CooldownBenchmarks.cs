using Coldwright.Machine.Files;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Benchmarks;

/// <summary>Four hours of the main example's cooldown: with property tables and maps at hand.</summary>
internal static class CooldownBenchmarks
{
    private static readonly CooldownOptions FourHours = new() { UntilS = 4 * 3600, Plateau = false, Halving = false };

    public static IEnumerable<Row> Rows()
    {
        var dir = new DirectoryInfo(AppContext.BaseDirectory);
        while (dir is not null && !Directory.Exists(Path.Combine(dir.FullName, "examples", "workshop"))) dir = dir.Parent;
        var folder = MachineFolderReader.Read(Path.Combine(dir?.FullName ?? ".", "examples", "workshop"));
        if (!folder.IsGood) throw new InvalidOperationException(string.Join("\n", folder.Problems));
        CooldownStudy? study = null;
        yield return Row.Of("cooldown/4h/tabulated", () => (study ??= new CooldownStudy(folder.Machine!, folder.Layout!, cubic: false)).Run(FourHours));
    }
}
