using Coldwright.Design.Blending;
using Coldwright.Machine.Files;

namespace Coldwright.Benchmarks;

/// <summary>The mixture for the main example out of six gases, refined with the reference model, on two threads: one search, in processor time, so that a busy machine does not matter.</summary>
internal static class BlendBenchmarks
{
    /// <summary>Too slow to run with the others: only when rows of this name are asked for.</summary>
    public const string Prefix = "blend";

    private static readonly string[] _gases = ["nitrogen", "methane", "ethane", "propane", "isobutane", "argon"];

    public static IEnumerable<Row> Rows()
    {
        var dir = new DirectoryInfo(AppContext.BaseDirectory);
        while (dir is not null && !Directory.Exists(Path.Combine(dir.FullName, "examples", "workshop"))) dir = dir.Parent;
        var folder = MachineFolderReader.Read(Path.Combine(dir?.FullName ?? ".", "examples", "workshop"));
        if (!folder.IsGood) throw new InvalidOperationException(string.Join("\n", folder.Problems));
        foreach (var (name, reference) in ((string, bool)[])[("blend/six-gases/cubic", false), ("blend/six-gases/reference", true)])
            yield return new Row(name, () => Measurement.ProcessorTime(name, () =>
            {
                var r = BlendSearch.Find(folder.Machine!, folder.Layout!, folder.Shop, new BlendOptions { Gases = _gases, Reference = reference, Threads = 2 });
                Console.Error.WriteLine(FormattableString.Invariant($"  {name}: {r.Rated.Cubic} cubic and {r.Rated.Reference} reference ratings, {(r.Rated.Cubic + r.Rated.Reference) / r.ProcessorSeconds:0} ratings a second of processor time, {r.Seconds:0.0} s by the clock, {r.Best.WorstMerit:0.00} W at worst"));
            }));
    }
}
