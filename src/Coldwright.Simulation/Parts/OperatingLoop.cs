using Coldwright.Fluids.EquationsOfState;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Quantities;
using Coldwright.Simulation.Rating;

namespace Coldwright.Simulation.Parts;

/// <summary>The rating with given pressures that a part's inlet states come from.</summary>
internal static class OperatingLoop
{
    private const int Passes = 3;
    private const double SettledShare = 0.01;

    /// <summary>The loop and everything a person must be told about how it was found.</summary>
    public static (ModelRating Loop, IReadOnlyList<Spoken> Warnings) Find(MachineDescription machine, LoopLayout layout, ShopDescription shop, HelmholtzModel model, RatingOptions options, CancellationToken cancel)
    {
        var (filled, plain, said) = StandIns.Fill(machine, layout, model, cancel);
        List<Spoken> warnings = [.. said];
        // a wall of several layers is the business of the box's own model; the point is then found without its leak, and said so
        bool layered = layout.ColdBox is { GivenInsulation: null };
        if (layered) warnings.Add("found without the heat leak: the wall of the cold box is described in layers, which only the box's own model reads");
        RatingResult Rate() => CoolerRating.Rate(filled, layered ? plain with { ColdBox = null } : plain, shop, options, null, cancel);
        var found = Rate();
        if (layout.Recuperator.GivenConductanceWPerK is null)
            for (int pass = 0; pass < Passes; pass++)
            {
                double before = plain.Recuperator.ConductanceWPerK, conductance = RecuperatorRater.Conductance(filled, plain.Recuperator, found.Main, model, cancel);
                (filled, plain) = StandIns.With(filled, plain, conductance);
                found = Rate();
                if (Math.Abs(conductance / before - 1) < SettledShare) break;
            }
        warnings.AddRange(found.Warnings.Where(w => !layered || !w.ToString().StartsWith("no cold-box", StringComparison.Ordinal)));
        return (found.Main, [.. warnings.Select(w => PartContext.OfThePoint + w)]);
    }
}
