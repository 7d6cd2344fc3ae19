using Coldwright.Machine.Files;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Benchmarks;

/// <summary>Four hours of the main example's cooldown, property tables and maps of the parts at hand from the run before; the same with derivatives by twelve parameters; and, only when asked for by its whole name, without tables.</summary>
internal static class CooldownBenchmarks
{
    /// <summary>Timed once, and not with the others.</summary>
    public const string DirectRow = "cooldown/4h/direct";

    private static readonly double[] SlopeTimes = [.. Enumerable.Range(1, 24).Select(i => 600.0 * i)];
    private static readonly CooldownOptions FourHours = new() { UntilS = 4 * 3600, Plateau = false, Halving = false };

    public static IEnumerable<Row> Rows()
    {
        var dir = new DirectoryInfo(AppContext.BaseDirectory);
        while (dir is not null && !Directory.Exists(Path.Combine(dir.FullName, "examples", "workshop"))) dir = dir.Parent;
        var folder = MachineFolderReader.Read(Path.Combine(dir?.FullName ?? ".", "examples", "workshop"));
        if (!folder.IsGood) throw new InvalidOperationException(string.Join("\n", folder.Problems));
        CooldownStudy? study = null;
        CooldownStudy Study() => study ??= new CooldownStudy(folder.Machine!, folder.Layout!, cubic: false);
        yield return Row.Of("cooldown/4h/tabulated", () => Study().Run(FourHours));
        yield return new Row(DirectRow, () =>
        {
            // tables at hand, as in the first row
            Study().Run(FourHours);
            return Measurement.Once(DirectRow, () => Study().Run(FourHours with { Direct = true }));
        });
        yield return Row.Of("cooldown/4h/sensitivity", () => Study().Run(FourHours with { Sensitivity = true, SlopeTimesS = SlopeTimes }));
    }
}
