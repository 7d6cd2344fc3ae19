using System.Globalization;
using Coldwright.Machine.Description;
using Coldwright.Safety.Oxygen;

namespace Coldwright.Safety.Rules;

/// <summary>Oxygen that gathers in liquid nitrogen made from impure gas while it boils away.</summary>
internal static class ProductPurityRule
{
    // A fifth left is a flask that somebody still uses; a hundredth is the film at the bottom. Our own steps.
    private const double InUse = 0.2;
    private const double Film = 0.01;
    private const string Label = "what a purity leaves to oxygen: A-A-59155 (2003), table A";

    public static IEnumerable<Finding> Apply(MachineDescription machine, CautionInputs inputs)
    {
        foreach (var feed in machine.PartsOf<FeedPart>())
        {
            if (feed.Gas != "nitrogen") continue;
            if (inputs.OxygenInFeed is not { } oxygen)
            {
                yield return new("nitrogen-purity-unknown", Grade.Note, feed.Name, null, null, "", "oxygen in the nitrogen fed is known: it stays behind when the liquid boils away", BoilOffEnrichment.Source,
                    "the last of a flask made from poor nitrogen is rich in oxygen", "enter the purity, and pour away the last of a flask outdoors");
                continue;
            }
            Guard.Within(oxygen, 0, 1, nameof(inputs.OxygenInFeed), "");
            if (oxygen < 1e-6) continue;
            var left = BoilOffEnrichment.RemainingAt(oxygen, machine.Room.PressurePa);
            yield return new("oxygen-enriching", left >= 1 ? Grade.Stop : left > InUse ? Grade.Serious : left > Film ? Grade.Caution : Grade.Note, feed.Name, 100 * left, 100 * InUse, "%",
                string.Create(CultureInfo.InvariantCulture, $"liquid from nitrogen with {(inputs.OxygenIsMost ? "up to " : "")}{100 * oxygen:0.####} % of oxygen passes 23.5 % oxygen when {(inputs.OxygenIsMost ? "up to " : "")}this share of it is left{(inputs.OxygenIsMost ? " (only the purity is known, and all that is not nitrogen may be oxygen)" : "")}; topping up a flask that is never emptied goes the same way"),
                inputs.OxygenIsMost ? $"{BoilOffEnrichment.Source}; {Label}" : BoilOffEnrichment.Source,
                "what is left feeds fire like liquid oxygen", $"use purer nitrogen{(inputs.OxygenIsMost ? ", or enter the oxygen that its certificate names" : "")}; never let a flask boil down and be topped up again and again; pour the rest away outdoors, off tar and wood");
        }
    }
}
