using Coldwright.Design.Blending;
using Coldwright.Design.Charging;
using Coldwright.Design.Sizing;
using Coldwright.Machine.Files.Editing;
using Coldwright.Report.Blending;
using Coldwright.Report.Charging;
using Coldwright.Report.Sizing;
using Coldwright.Safety;
using Coldwright.Simulation.Rating;
using Coldwright.Web.Cooler;
using Coldwright.Web.Orders;

namespace Coldwright.Web.Answers;

/// <summary>Calls what plans a cooler: the best mixture, the filling, the sizes.</summary>
internal static class Planners
{
    /// <summary>The mixture that gives most; stopped on its way, the best so far. One processor is left for whoever moves a slider meanwhile.</summary>
    public static BlendReport Blend(Snapshot files, BlendOptions options, Action<string> observer, CancellationToken cancel)
    {
        var (machine, shop) = (files.Folder.Machine!, files.Folder.Shop);
        var result = BlendSearch.Find(machine, files.Folder.Layout!, shop, options with { Threads = Math.Clamp(Environment.ProcessorCount - 1, 1, 8) }, observer, cancel);
        var changed = machine with { Charge = machine.Charge with { Mixture = result.Best.Mixture } };
        return new BlendReport { Machine = machine, Result = result, Findings = NotInSight(Cautions.For(changed, CautionInputs.Of(changed, shop)), files), Currency = shop?.Currency ?? "", Notes = files.Folder.Notes };
    }

    /// <summary>How to fill it; stopped on its way, without what circulates once it is cold.</summary>
    public static ChargeReport Charge(Snapshot files, ChargeOptions options, bool cubic, Action<string> observer, CancellationToken cancel)
    {
        var machine = files.Folder.Machine!;
        var result = ChargePlanner.Plan(machine, files.Folder.Layout!, files.Folder.Shop, options, Model(cubic), observer, cancel);
        return new ChargeReport { Machine = machine, Result = result with { Findings = NotInSight(result.Findings, files) }, Notes = files.Folder.Notes };
    }

    /// <summary>A part's dimensions from stock; stopped on its way, the stock looked at so far.</summary>
    public static SizeReport Size(Snapshot files, SizeOrder order, bool cubic, Action<string> observer, CancellationToken cancel)
    {
        var (machine, shop) = (files.Folder.Machine!, files.Folder.Shop);
        var result = PartSizer.Size(machine, files.Folder.Layout!, shop, order.Part, order.Target, Model(cubic), observer, cancel);
        return new SizeReport { Machine = machine, Result = result, Currency = shop?.Currency ?? "", Findings = [], Notes = files.Folder.Notes };
    }

    /// <summary>What the best mixture would write into the file.</summary>
    /// <param name="report">What was found.</param>
    /// <param name="text">Text of the machine file; a file that counts by mass is told that these are mole fractions.</param>
    public static IEnumerable<(string Place, string Value)> Keys(BlendReport report, string? text)
    {
        yield return ("charge/mixture", Thousandths(report.Result.Best));
        if (text is not null && ValueEditor.Find(text, "charge/fractions") == "mass") yield return ("charge/fractions", "mole");
    }

    /// <summary>What the best size would write into the file.</summary>
    public static IEnumerable<(string Place, string Value)> Keys(SizeReport report) =>
        report.Result.Best is { } best ? FileKeys.OfPart(report.Result.Part, best.Keys) : [];

    // To a thousandth, as a balance fills it; the largest share takes what rounding leaves.
    private static string Thousandths(BlendChoice best)
    {
        var (names, shares) = (best.Mixture.Names, best.Mixture.MoleFractions.Select(x => (int)Math.Round(1000 * x)).ToArray());
        var largest = Array.IndexOf(shares, shares.Max());
        shares[largest] += 1000 - shares.Sum();
        return string.Join(", ", names.Zip(shares).Where(p => p.Second > 0).Select(p => FormattableString.Invariant($"{p.First} {p.Second / 1000.0:0.###}")));
    }

    // The page always shows the findings about the files as they are; an answer adds those that are its own.
    private static IReadOnlyList<Finding> NotInSight(IReadOnlyList<Finding> findings, Snapshot files)
    {
        var seen = Raters.Findings(files, null).Select(f => (f.Id, f.Part, f.Grade)).ToHashSet();
        return [.. findings.Where(f => !seen.Contains((f.Id, f.Part, f.Grade)))];
    }

    private static RatingOptions Model(bool cubic) => new() { Model = cubic ? RatingModel.Cubic : RatingModel.Reference };
}
