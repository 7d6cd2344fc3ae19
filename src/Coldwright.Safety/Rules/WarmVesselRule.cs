using System.Globalization;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Safety.Layout;
using Coldwright.Safety.Warming;

namespace Coldwright.Safety.Rules;

/// <summary>What the cold vessel would reach if it warmed shut, and how little liquid it could then hold.</summary>
internal static class WarmVesselRule
{
    public static IEnumerable<Finding> Apply(MachineLayout layout)
    {
        var machine = layout.Machine;
        if (machine.PartsOf<FeedPart>().FirstOrDefault()?.Gas is not { } gas || !SubstanceCatalog.Names.Contains(gas)) yield break;
        foreach (var volume in layout.ClosedVolumes().Where(v => v.Zone == Zone.Feed && v.Parts.Any(p => p is VesselPart)))
        {
            var full = WarmFullVessel.PressurePa(gas, 1, machine.Room.TemperatureK);
            var limit = TrappedLiquidRule.Weakest(volume, layout);
            var fill = limit is { } l ? string.Create(CultureInfo.InvariantCulture, $"; shut and warm it stays below its limit only up to {100 * WarmFullVessel.LargestFill(gas, l, machine.Room.TemperatureK):0.0} % full") : "";
            yield return new("warm-full-vessel", Grade.Note, volume.Name, full, limit, "Pa",
                $"full of liquid {gas}, shut and left to warm to the room, it would reach this pressure{fill}",
                LiquidExpansion.Source, "no tube holds it", "never shut the way to the relief, never fill to the top, empty the vessel before standing");
        }
    }
}
