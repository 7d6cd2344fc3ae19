using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Safety.Layout;
using Coldwright.Safety.Pressure;

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
                yield return volume.IsBlockedHighSide ? HighSide(volume, weakest) : Trapped(volume, weakest, layout, inputs);
            foreach (var relief in volume.Reliefs)
                if (weakest is { } limit && relief.SetPressurePa > limit)
                    yield return new("relief-set-too-high", Grade.Stop, relief.Name, relief.SetPressurePa, limit, "Pa",
                        "a relief device opens at or below the allowed pressure of everything it protects", "ASME VIII-1 UG-134, from memory",
                        "the weakest part bursts before the relief opens", "take a relief with a lower set pressure");
        }
    }

    private static Finding Trapped(ClosedVolume volume, double? weakest, MachineLayout layout, CautionInputs inputs) =>
        new("trapped-liquid", Grade.Stop, volume.Name, ShutIn(volume.Zone, layout.Machine, inputs), weakest, "Pa",
            $"every space that valves can close on cold liquid has a relief device of its own; {Between(volume)} has none", (volume.Zone == Zone.Feed ? LiquidExpansion.Source : "computed with the reference equations of the mixture") + "; relief devices for cryogenic vessels: ISO 21013-3",
            "a space full of cold liquid reaches such a pressure when it warms to the room; no tube holds it", $"put a relief valve or burst disc on {volume.Name}, with no valve between it and the liquid");

    private static Finding HighSide(ClosedVolume volume, double? weakest) =>
        new("trapped-high-side", Grade.Serious, volume.Name, null, weakest, "Pa",
            $"a high side that valves can shut off from the low side has a relief device; {Between(volume)} has none, and the compressor lets nothing back", "EN 378-2, protection of positive-displacement compressors and of shut-in liquid, from memory",
            "cold liquid in the high side boils into a small space when the cooler stands, and a running compressor pumps on against the shut valve", "put a relief device that blows outdoors between the compressor and the first valve");

    /// <summary>Lowest allowed pressure in a volume at room temperature, Pa absolute; null when nothing in it is rated.</summary>
    internal static double? Weakest(ClosedVolume volume, MachineLayout layout)
    {
        var machine = layout.Machine;
        // Of an exchanger only the streams that belong to this volume count.
        var zones = volume.Lines.Select(layout.ZoneOf).Append(volume.Zone).ToHashSet();
        var (roomK, roomPa) = (machine.Room.TemperatureK, machine.Room.PressurePa);
        var lines = volume.Lines.Select(l => l.Tube is { } tube ? TubeLimits.OfTube(tube, roomK, roomPa) : null);
        var stamps = volume.Parts.Concat(volume.Borders).Select(p => p.MaximumPressurePa);
        var tubes = volume.Parts.SelectMany(TubeLimits.Of).Where(t => zones.Contains(t.Zone)).Select(t => TubeLimits.OfTube(t.Tube, roomK, roomPa));
        var ends = volume.Parts.OfType<VesselPart>().Where(PressureItems.IsCopper)
            .Select(v => v.CapThicknessM is { } cap ? roomPa + PressureItems.CapGaugePa(v, cap, roomK) : (double?)null);
        return lines.Concat(stamps).Concat(tubes).Concat(ends).Min();
    }

    private static string Between(ClosedVolume volume) => volume.Borders.Count switch
    {
        0 => $"the space around {volume.Name}",
        1 => $"the space that {volume.Borders[0].Name} closes",
        _ => $"the space between {string.Join(", ", volume.Borders.SkipLast(1).Select(b => b.Name))} and {volume.Borders[^1].Name}",
    };

    private static double? ShutIn(Zone zone, MachineDescription machine, CautionInputs inputs)
    {
        if (zone != Zone.Feed) return inputs.TrappedPressurePa?.Invoke(machine.Charge.Mixture, machine.Room.TemperatureK);
        var gas = machine.PartsOf<FeedPart>().FirstOrDefault()?.Gas;
        if (gas is null) return null;
        return inputs.TrappedPressurePa?.Invoke(new Composition([gas], [1]), machine.Room.TemperatureK) ?? LiquidExpansion.ShutInPressurePa(gas);
    }
}
