using Coldwright.Machine.HeatTransfer;
using Coldwright.Quantities;

namespace Coldwright.Machine.ColdVessel;

/// <summary>What a person must be told about a coil in its vessel.</summary>
internal static class ColdVesselWarnings
{
    private const double LaminarFilm = 1800, LargestSuperheatK = 50, NearCritical = 0.95;

    public static IReadOnlyList<Spoken> Of(ColdVesselInput input, ColdVesselResult r, CoilSums sums)
    {
        var (product, coil) = (input.Product, input.Coil);
        var list = new List<Spoken>();
        void Say(Spoken.Words text) => list.Add(Spoken.Of($"cold vessel: {Spoken.Of(text)}"));
        if (product.IsDense)
            Say($"{SpokenAmount.Pressure(product.PressurePa, "0.##")} is above the content's critical pressure: nothing condenses, the coil cools a dense fluid by free convection and the vessel counts as full");
        else if (r.CondensingAreaM2 <= 0)
            Say($"the level of {input.LevelM:0.###} m covers all of the coil (top at {coil.TopM:0.###} m): nothing condenses{(r.Steady ? " and the liquid ends as cold as the mixture" : "")}");
        double coldest = r.Profile.Min(s => s.WallK);
        if (coldest < product.FreezingK)
            Say($"the coil's surface is as cold as {SpokenAmount.Temperature(coldest, "0.##")}, below the content's triple point of {SpokenAmount.Temperature(product.FreezingK, "0.##")}: it freezes onto the coil, which is not modelled and lowers the heat");
        else if (r.LiquidK < product.FreezingK)
            Say($"the liquid at {SpokenAmount.Temperature(r.LiquidK, "0.##")} would be below its triple point of {SpokenAmount.Temperature(product.FreezingK, "0.##")}");
        if (!product.IsDense)
        {
            double mu = product.Liquid(product.BubbleK!.Value).Viscosity;
            // both sides of a horizontal tube share the condensate of all turns above it
            double film = (coil.Position == CoilPosition.Around ? 4 / input.Vessel.BoreM : 2 / coil.CoilDiameterM) * r.CondensedKgPerS / (Math.PI * mu);
            if (film > LaminarFilm) Say($"the condensate at the lowest turn has a film Reynolds number of {film:0}, above {LaminarFilm:0}: it is turbulent and condenses somewhat better than stated");
            if (product.GlideK > ColdVesselDoubt.LeastGlideK)
                Say($"the content is a mixture with a glide of {SpokenAmount.Difference(product.GlideK, "0.##")}; without venting, the gas that condenses last stays behind: the condensing film is known to some {100 * ColdVesselDoubt.CondensingUncertainty(input):0} % only");
            if (input.FeedK is { } feed && feed - product.DewK!.Value > LargestSuperheatK)
                Say($"the feed enters {SpokenAmount.Difference(feed - product.DewK!.Value, "0")} above its dew point; it is taken to mix well with the gas in the vessel, and its heat to reach the coil with the condensate");
            if (product.PressurePa > NearCritical * product.CriticalPressurePa) Say($"{SpokenAmount.Pressure(product.PressurePa, "0.##")} is within {100 * (1 - NearCritical):0} % of the critical pressure, where the film theory is unsure");
        }
        if (sums.OutsideTable) Say($"the mixture left the range of its property table ({SpokenAmount.Temperature(input.Mixture.Table.ColdestK, "0.#")} to {SpokenAmount.Temperature(input.Mixture.Table.WarmestK, "0.#")}); its properties there are extrapolated");
        foreach (string text in Ranges(input, r)) list.Add(text);
        return [.. list.Concat(Spoken.All(input.Mixture.Table.Warnings)).Concat(Spoken.All(product.Warnings)).Distinct()];
    }

    private static IReadOnlyList<string> Ranges(ColdVesselInput input, ColdVesselResult r)
    {
        foreach (var s in r.Profile)
        {
            if (s.Quality is <= 1e-6 or >= 1 - 1e-6) continue;
            // what is not named is not judged
            var channel = input.Coil.Channel();
            return FlowRange.Boiling(new TwoPhaseFlow { MassFlux = input.Mixture.MassFlow / channel.AreaM2, Quality = s.Quality, DiameterM = channel.HydraulicDiameterM });
        }
        return [];
    }
}
