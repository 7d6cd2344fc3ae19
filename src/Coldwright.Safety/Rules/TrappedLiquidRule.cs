using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Safety.Layout;

namespace Coldwright.Safety.Rules;

/// <summary>Volumes that shut valves turn into bombs: cold liquid inside and no relief, or a relief that opens too late.</summary>
internal static class TrappedLiquidRule
{
    public static IEnumerable<Finding> Apply(MachineLayout layout, CautionInputs inputs)
    {
        foreach (var volume in layout.ClosedVolumes())
        {
            var weakest = Weakest(volume, layout);
            if (volume.HoldsLiquid && !volume.HasRoom && !volume.Reliefs.Any())
                yield return new("trapped-liquid", Grade.Stop, volume.Name, ShutIn(volume.Zone, layout.Machine, inputs), weakest, "Pa",
                    "every space that valves can close on cold liquid needs a relief device of its own",
                    LiquidExpansion.Source + "; relief devices for cryogenic vessels: ISO 21013-3",
                    "shut-in liquid warms to room temperature and bursts any tube",
                    $"put a relief valve or burst disc between the valves around {volume.Name}");
            foreach (var relief in volume.Reliefs)
                if (weakest is { } limit && relief.SetPressurePa > limit)
                    yield return new("relief-set-too-high", Grade.Stop, relief.Name, relief.SetPressurePa, limit, "Pa",
                        "a relief device opens at or below the allowed pressure of everything it protects", "ASME VIII-1 UG-134, from memory",
                        "the weakest part bursts before the relief opens", "take a relief with a lower set pressure");
        }
    }

    /// <summary>Lowest allowed pressure in a volume at room temperature, Pa absolute; null when nothing in it is rated.</summary>
    private static double? Weakest(ClosedVolume volume, MachineLayout layout)
    {
        var machine = layout.Machine;
        // Of an exchanger only the streams that belong to this volume count.
        var zones = volume.Lines.Select(layout.ZoneOf).Append(volume.Zone).ToHashSet();
        var (roomK, roomPa) = (machine.Room.TemperatureK, machine.Room.PressurePa);
        var lines = volume.Lines.Select(l => l.Tube is { } tube ? TubeLimits.OfTube(tube, roomK, roomPa) : null);
        var parts = volume.Parts.SelectMany(p => p.MaximumPressurePa is { } stamped
            ? [stamped]
            : TubeLimits.Of(p).Where(t => zones.Contains(t.Zone)).Select(t => TubeLimits.OfTube(t.Tube, roomK, roomPa)));
        return lines.Concat(parts).Min();
    }

    private static double? ShutIn(Zone zone, MachineDescription machine, CautionInputs inputs)
    {
        if (zone != Zone.Feed) return inputs.TrappedPressurePa?.Invoke(machine.Charge.Mixture, machine.Room.TemperatureK);
        var gas = machine.PartsOf<FeedPart>().FirstOrDefault()?.Gas;
        if (gas is null) return null;
        return inputs.TrappedPressurePa?.Invoke(new Composition([gas], [1]), machine.Room.TemperatureK) ?? LiquidExpansion.ShutInPressurePa(gas);
    }
}
