using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;

namespace Coldwright.Simulation.Rating;

/// <summary>Cost of a collected litre: electricity, feed gas, charge lost over time.</summary>
internal static class LitreCost
{
    /// <summary>The cost; null without product.</summary>
    /// <param name="shop">Prices.</param>
    /// <param name="made">Product.</param>
    /// <param name="powerW">Electrical power, W.</param>
    /// <param name="mixture">Charged mixture.</param>
    /// <param name="chargeMol">Charge, mol; 0 when not known.</param>
    /// <param name="model">Model of the mixture.</param>
    public static CostPerLitre? Of(ShopDescription shop, LiquidResult? made, double powerW, Composition mixture, double chargeMol, HelmholtzModel model)
    {
        if (made is not { CollectedLPerH: > 0 } liquid) return null;
        double perHour = liquid.CollectedLPerH;
        double gas = shop.GasPerKg.TryGetValue(liquid.Substance, out double price) ? price * liquid.RateKgPerS * 3600 / perHour : 0;
        double cost = 0;
        for (int i = 0; i < mixture.Names.Count; i++)
            if (shop.GasPerKg.TryGetValue(mixture.Names[i], out double p)) cost += chargeMol * mixture.MoleFractions[i] * model.Substances[i].MolarMass * p;
        return new CostPerLitre(shop.Currency, powerW / 1000 * shop.ElectricityPerKWh / perHour, gas, cost * shop.ChargeLossPer1000H / 1000 / perHour);
    }
}
