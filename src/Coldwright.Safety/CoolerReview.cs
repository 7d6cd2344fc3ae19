using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Numerics;
using Coldwright.Simulation.Rating;

namespace Coldwright.Safety;

/// <summary>The full review with a rating of the cooler ahead of it, which tells how hot its discharge and how cold its coldest part becomes.</summary>
public static class CoolerReview
{
    /// <summary>Rates and reviews. A cooler that cannot be rated is reviewed from its description, with a warning.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="layout">Its parts in the order the gas meets them.</param>
    /// <param name="shop">Its shop; null when there is none.</param>
    /// <param name="options">Fluid model of the rating.</param>
    /// <param name="observer">Told what is being done.</param>
    /// <param name="cancellation">Stops the rating and between rules.</param>
    /// <exception cref="ArgumentException">The description holds a value out of a rule's range.</exception>
    public static SafetyReview Of(MachineDescription machine, LoopLayout layout, ShopDescription? shop, RatingOptions options,
        Action<string>? observer = null, CancellationToken cancellation = default)
    {
        ModelRating? rating = null;
        var warnings = new List<string>();
        try
        {
            var prices = shop ?? new ShopDescription { Currency = "", ElectricityPerKWh = 0, GasPerKg = new Dictionary<string, double>() };
            rating = CoolerRating.Rate(machine, layout, prices, options, observer, cancellation).Main;
        }
        catch (SolveException e)
        {
            // Findings that need no rating must not be lost with it.
            warnings.Add($"the cooler could not be rated ({e.Report.Advice}); the discharge counts as hot as its compressor allows, and how cold the coldest part becomes is not known");
        }
        observer?.Invoke("working out what shut-in liquid does");
        var review = SafetyReview.Of(machine, CautionInputs.Of(machine, shop, rating), cancellation);
        return review with { Warnings = [.. warnings, .. review.Warnings] };
    }
}
