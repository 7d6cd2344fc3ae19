using Coldwright.Fluids.Freezing;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Design.Charging;

/// <summary>Air, water and carbon dioxide that come in with the charge, and whether they freeze in the cold end.</summary>
internal static class ChargeTraces
{
    private const double AirOxygen = 0.2095, Nothing = 1e-12;
    private static readonly string[] _freezing = ["water", "carbon-dioxide"];

    public static IReadOnlyList<TraceInCharge> Of(Composition mixture, Evacuation pump, double chargeMol, ShopDescription? shop, double highPa, double coldestK, List<Spoken> said)
    {
        double Brought(string name) => shop is null ? 0 : mixture.Names.Zip(mixture.MoleFractions, (gas, x) => shop.GasImpurities.TryGetValue(gas, out var held) && held.TryGetValue(name, out double share) ? x * share : 0).Sum();
        if (shop is null || mixture.Names.All(n => !shop.GasImpurities.ContainsKey(n)))
            said.Add("what the gases bring with them is not known: add their certificates to shop.yaml (methane: {price: 14 per kg, water: 5 ppm, carbon-dioxide: 20 ppm, oxygen: 5 ppm})");
        var found = new List<TraceInCharge> { new("oxygen", AirOxygen * pump.AirMol / chargeMol, mixture.Names.Contains("oxygen") ? 0 : Brought("oxygen"), null, null) };
        foreach (string name in _freezing.Where(n => !mixture.Names.Contains(n)))
        {
            double pumped = name == "water" ? pump.WaterMol / chargeMol : 0, total = pumped + Brought(name);
            if (total < Nothing) continue;
            double? freezes = null, allowed = null;
            try
            {
                var model = Contaminants.InReferenceModel(mixture.Names, [name]);
                double[] z = [.. mixture.MoleFractions];
                freezes = model.PlugTemperature(name, Math.Min(total, Contaminants.LargestTrace), highPa, z, coldestK)?.TemperatureK;
                allowed = model.AllowedMoleFraction(name, coldestK, highPa, z);
            }
            catch (SolveException e)
            {
                said.Add($"whether {name.Replace('-', ' ')} freezes could not be worked out: {e.Report.Advice}");
            }
            found.Add(new(name, pumped, Brought(name), freezes, allowed));
        }
        return found;
    }
}
