using Coldwright.Machine.Description;

namespace Coldwright.Safety.Rules;

/// <summary>Oxygen as the product, and oxygen in a charge that burns or is pumped by an oiled compressor.</summary>
internal static class OxygenRule
{
    private const string Source = "Beeson, Smith, Stewart, Safe Use of Oxygen and Oxygen Systems, ASTM MNL36 (2007); cleaning: ASTM G93; impact on organic matter in liquid oxygen: ASTM D2512";

    public static IEnumerable<Finding> Apply(MachineDescription machine)
    {
        foreach (var feed in machine.PartsOf<FeedPart>())
        {
            if (feed.Gas == "oxygen")
                yield return new("oxygen-product", Grade.Stop, feed.Name, null, null, "",
                    "liquid and compressed oxygen only in equipment cleaned, chosen and approved for oxygen", Source,
                    "oil, grease, swarf, foam and clothing soaked with oxygen burn like explosives",
                    "stop and read: no oiled compressor, no ordinary foam or solder flux, no flammable charge near it; get someone trained in oxygen service");
            if (feed.Gas == "oxygen")
                foreach (var box in machine.PartsOf<ColdBoxPart>())
                    if (OrganicInsulation.In(box) is { } material)
                        yield return new("oxygen-organic-insulation", Grade.Stop, box.Name, null, null, "",
                            $"no organic insulation ({material}) around liquid oxygen", Source,
                            "foam soaked with oxygen burns like an explosive from a knock or a spark", "use perlite, glass wool or foam glass, free of oil and binder");
            if (feed.Gas == "methane")
                yield return new("flammable-product", Grade.Serious, feed.Name, null, null, "",
                    "liquid methane boils to a gas that burns in air from 4.4 % upwards", FlammabilityLimits.Source,
                    "boil-off and spills make an explosive cloud", "collect outdoors or under an extraction hood, with no source of ignition");
        }
        var names = machine.Charge.Mixture.Names;
        if (Share(machine, "oxygen") > 0)
            yield return new("oxygen-in-charge", Grade.Stop, "charge", 100 * Share(machine, "oxygen"), 0, "%",
                names.Any(FlammabilityLimits.Burns) ? "never compress oxygen together with something that burns" : "never compress oxygen in an oiled compressor", Source,
                "the compressor can explode", "take the oxygen out of the charge");
    }

    private static double Share(MachineDescription machine, string name)
    {
        var mixture = machine.Charge.Mixture;
        return mixture.Names.Zip(mixture.MoleFractions).Where(p => p.First == name).Sum(p => p.Second);
    }
}
