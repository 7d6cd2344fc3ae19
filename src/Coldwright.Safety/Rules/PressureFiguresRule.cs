using System.Globalization;
using Coldwright.Machine.Description;
using Coldwright.Safety.Layout;
using Coldwright.Safety.Pressure;

namespace Coldwright.Safety.Rules;

/// <summary>Weakest part, proof test and stored energy of every pressure zone.</summary>
internal static class PressureFiguresRule
{
    public static IEnumerable<Finding> Apply(MachineLayout layout, CautionInputs inputs)
    {
        var room = layout.Machine.Room;
        foreach (var zone in PressureItems.Of(layout, inputs).Where(i => i.Zone != Zone.Unknown).GroupBy(i => i.Zone).OrderBy(g => g.Key))
        {
            var weakest = zone.MaxBy(i => i.UsedShare(room.PressurePa))!;
            if (weakest.LimitPa is not { } limit) continue;
            var side = Name(zone.Key);
            yield return new("weakest-part", Grade.Note, weakest.Name, weakest.WorkingPa, limit, "Pa",
                $"of all that was rated on the {side} side, this part uses most of its allowed pressure", "the ratings of this program", "it fails first", "look here first when something is to be made stronger");

            var allowed = Math.Max(zone.Max(i => i.WorkingPa), SetPressure(zone.Key, layout));
            var test = room.PressurePa + ProofTest.WaterGaugePa(Math.Max(allowed - room.PressurePa, 0));
            yield return new("proof-test", Grade.Note, side + " side", test, room.PressurePa + ProofTest.WaterFactor * (limit - room.PressurePa), "Pa",
                "tested before first use with water, free of air, at 1.43 times the highest pressure in use (the relief's set pressure where there is one); a gas test stores thousands of times the energy", ProofTest.Source,
                "a weak joint lets go with people beside it", "water, not gas: pump it in by hand behind a shield before the compressor is joined in, hold ten minutes, look for bulging and drops, then dry and evacuate");

            var volume = ZoneVolume.M3(zone.Key, layout.Machine);
            if (volume <= 0) continue;
            var gas = StoredEnergy.GasJ(Math.Max(test, room.PressurePa), room.PressurePa, volume);
            var water = StoredEnergy.WaterJ(Math.Max(test - room.PressurePa, 0), volume);
            yield return new("stored-energy", Grade.Note, side + " side", gas, null, "J",
                string.Create(CultureInfo.InvariantCulture, $"gas at the test pressure in the tubes and vessels described ({volume * 1e3:0.00} L) holds this energy"), StoredEnergy.Source,
                "bursting gas throws pieces; bursting water drips", string.Create(CultureInfo.InvariantCulture, $"test with water, which holds {water:0.0} J; never stand in line with an end"));
        }
    }

    private static double SetPressure(Zone zone, MachineLayout layout) =>
        layout.Machine.PartsOf<ReliefPart>().Where(r => layout.ZoneOf(r) == zone).Select(r => r.SetPressurePa).DefaultIfEmpty(0).Max();

    private static string Name(Zone zone) => zone switch { Zone.High => "high", Zone.Low => "low", Zone.Feed => "product", _ => "unknown" };
}
