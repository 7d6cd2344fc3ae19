using Coldwright.Fluids.Freezing;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Feed;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Simulation.Batch;

/// <summary>What the impurities of the feed do: glide, vapour that stays, oxygen in the flask, ice and dry ice.</summary>
internal static class ImpurityAccount
{
    private const double TenthLeft = 0.1;

    public static ImpurityResult Of(BatchCooler cooler, ProductPurity purity, BatchRun run, List<Spoken> said)
    {
        var map = cooler.Product;
        var flash = new Flash(map.Model);
        double[] z = [.. map.Composition];
        double? bubble = map.BubbleTemperature(run.Plan.FeedPressurePa), dew = map.DewTemperature(run.Plan.FeedPressurePa);
        IReadOnlyList<double>? stays = bubble is null || z.Length == 1 ? (bubble is null ? null : z) : flash.PressureVapourFraction(run.Plan.FeedPressurePa, 0.5, z).Phases[0].Composition;
        IReadOnlyList<double> collected = z;
        (double, double)? oxygen = null;
        if (z.Length > 1)
        {
            double share = Math.Clamp(run.Details.DischargedKg > 0 ? run.Grams.FlashedKg / run.Details.DischargedKg : 0, 0.01, 0.95);
            var state = flash.PressureVapourFraction(cooler.RoomPa, share, z);
            collected = state.Phases[^1].Composition;
            int o = purity.Mixture.Names.ToList().IndexOf("oxygen");
            if (o > 0)
            {
                // Rayleigh: d ln x / d ln (left) = K - 1, with the K of the fresh liquid
                double k = state.Phases[0].Composition[o] / collected[o];
                oxygen = (collected[o], Math.Min(1, collected[o] * Math.Pow(TenthLeft, k - 1)));
            }
        }
        return new ImpurityResult
        {
            Feed = purity.Mixture, GlideK = dew - bubble, VapourThatStays = stays, Collected = collected, Oxygen = oxygen, Traces = [.. Traces(cooler, purity, run, said)],
        };
    }

    private static IEnumerable<(string, double, double, double?)> Traces(BatchCooler cooler, ProductPurity purity, BatchRun run, List<Spoken> said)
    {
        if (purity.Traces.Count == 0) yield break;
        var model = Contaminants.InReferenceModel(purity.Mixture.Names, [.. purity.Traces.Select(t => t.Name)]);
        said.AddRange(Spoken.All(model.Warnings));
        double[] z = [.. purity.Mixture.MoleFractions, .. purity.Traces.Select(_ => 0.0)];
        double coldest = Math.Max(cooler.FreezingK, run.Series.Count > 0 ? run.Series.Min(m => m.TemperatureK) : cooler.StartK), molarMass = cooler.Product.Phase.MolarMass;
        foreach (var (name, share) in purity.Traces.Where(t => t.MoleFraction > 0))
        {
            double fed = run.Grams.FedKg * share * SubstanceCatalog.Get(name).MolarMass / molarMass;
            double? plug = null, allowed = null;
            try
            {
                plug = model.PlugTemperature(name, Math.Min(share, Contaminants.LargestTrace), run.Plan.FeedPressurePa, z, cooler.FreezingK)?.TemperatureK;
                allowed = model.AllowedMoleFraction(name, coldest, run.Plan.FeedPressurePa, z);
            }
            catch (SolveException e)
            {
                said.Add($"how much {name} freezes could not be worked out: {e.Report.Advice}");
            }
            yield return (name, fed, allowed is { } solved ? fed * Math.Clamp(1 - solved / share, 0, 1) : 0, plug);
        }
    }
}
