using System.Diagnostics;
using Coldwright.Machine.Description;
using Coldwright.Numerics;
using Coldwright.Report.Batch;
using Coldwright.Report.Cooldown;
using Coldwright.Safety;
using Coldwright.Simulation.Batch;
using Coldwright.Simulation.Cooldown;
using Coldwright.Simulation.Rating;
using Coldwright.Web.Cooler;

namespace Coldwright.Web.Answers;

/// <summary>Calls the solvers for the page; what they find is shown elsewhere.</summary>
internal static class Raters
{
    // A first answer is for the eye that follows a slider: a coarser curve, one model, the two pressures of the file.
    private static readonly RatingOptions _first = new() { Model = RatingModel.Cubic, Hold = HeldPressure.Both, CurveStepK = 8, CurveErrorK = 0.3 };

    /// <summary>The first answer: the cubic model between the two pressures of the file.</summary>
    public static Rated First(Snapshot files, CancellationToken cancel) => Rate(files, _first, null, cancel);

    /// <summary>The reference model's answer with the cubic model's beside it, pressures held as the file says; where they follow, with the slopes
    /// that the next change is forecast by.</summary>
    public static Rated Full(Snapshot files, Action<string>? observer, CancellationToken cancel) =>
        Rate(files, new RatingOptions { Sensitivity = IsClosed(files) }, observer, cancel);

    /// <summary>True when a rating of these files closes the loop.</summary>
    public static bool IsClosed(Snapshot files) =>
        CoolerRating.Held(files.Folder.Machine!, files.Folder.Layout!, new RatingOptions(), out var missing) != HeldPressure.Both && missing.Count == 0;

    /// <summary>What each choice and doubt does to the figures, pressures following from hardware and charge.</summary>
    public static Rated Helps(Snapshot files, bool cubic, Action<string>? observer, CancellationToken cancel) =>
        Rate(files, new RatingOptions { Model = cubic ? RatingModel.Cubic : RatingModel.Reference, Hold = HeldPressure.Neither, Sensitivity = true }, observer, cancel);

    /// <summary>A cooldown to where it stands still.</summary>
    public static CooldownReport Cooldown(Snapshot files, bool cubic, Action<string> observer, CancellationToken cancel)
    {
        var machine = files.Folder.Machine!;
        var result = CooldownSolver.Run(machine, files.Folder.Layout!, new CooldownOptions { Cubic = cubic, Halving = false }, observer, cancel);
        return new CooldownReport { Machine = machine, Result = result, Findings = Findings(files, null) };
    }

    /// <summary>A batch by the schedule that collects most per hour.</summary>
    public static BatchReport Batch(Snapshot files, bool cubic, Action<string> observer, CancellationToken cancel)
    {
        var (machine, shop) = (files.Folder.Machine!, files.Folder.Shop);
        var result = BatchSimulation.Run(machine, files.Folder.Layout!, shop, new RatingOptions { Model = cubic ? RatingModel.Cubic : RatingModel.Reference }, new BatchOptions(), observer, cancel);
        // A batch that was stopped comes back shortened; on the page stopped is stopped.
        cancel.ThrowIfCancellationRequested();
        return new BatchReport { Machine = machine, Result = result, Findings = BatchFindings.Of(machine, shop, result), Notes = files.Folder.Notes };
    }

    /// <summary>The full safety review, told by the first answer how hot and how cold the cooler becomes.</summary>
    public static SafetyReview Safety(Snapshot files, Action<string> observer, CancellationToken cancel)
    {
        observer("looking at what can hurt somebody");
        ModelRating? rating = null;
        var warnings = new List<string>();
        try
        {
            rating = First(files, cancel).Result.Main;
        }
        catch (SolveException e)
        {
            // Findings that need no rating must not be lost with it.
            warnings.Add($"the cooler could not be rated ({e.Report.Advice}), so the review knows its temperatures from the description alone");
        }
        var review = SafetyReview.Of(files.Folder.Machine!, CautionInputs.Of(files.Folder.Machine!, files.Folder.Shop, rating), cancel);
        return review with { Warnings = [.. warnings, .. review.Warnings] };
    }

    /// <summary>Findings that need no fluid computed.</summary>
    public static IReadOnlyList<Finding> Findings(Snapshot files, ModelRating? rating) =>
        files.Folder.Machine is { } machine ? Cautions.For(machine, CautionInputs.Of(machine, files.Folder.Shop, rating)) : [];

    private static Rated Rate(Snapshot files, RatingOptions options, Action<string>? observer, CancellationToken cancel)
    {
        var watch = Stopwatch.StartNew();
        var (machine, layout) = (files.Folder.Machine!, files.Folder.Layout!);
        var result = CoolerRating.Rate(machine, layout, files.Folder.Shop ?? NoShop, options, observer, cancel);
        if (files.Folder.Shop is null) result = result with { Main = WithoutCost(result.Main), SecondOpinion = result.SecondOpinion is { } second ? WithoutCost(second) : null };
        return new Rated(files, result, Findings(files, result.Main), watch.Elapsed.TotalSeconds);
    }

    // Without prices there is no cost, rather than a cost of 0.
    private static ShopDescription NoShop => new() { Currency = "", ElectricityPerKWh = 0, GasPerKg = new Dictionary<string, double>() };

    private static ModelRating WithoutCost(ModelRating rating) => rating with { CostPerL = null };
}
