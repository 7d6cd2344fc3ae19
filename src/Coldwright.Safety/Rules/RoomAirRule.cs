using Coldwright.Machine.Description;

namespace Coldwright.Safety.Rules;

/// <summary>Air of the room after everything liquid has been spilled in it.</summary>
/// <remarks>O2 = 20.95 % (Vr - Vg) / Vr, Vr the room, Vg the gas made; spilled oxygen adds Vg. Ventilation is left out, which is cautious.</remarks>
internal static class RoomAirRule
{
    private const double NormalPercent = 20.95;
    private const double DeficientPercent = 19.5;
    private const double EvacuatePercent = 18;
    private const double EnrichedPercent = 23.5;
    private const string Source = "OSHA 29 CFR 1910.134 and 1910.146: below 19.5 % deficient, above 23.5 % enriched; room formula of university safety offices; gas made: " + LiquidExpansion.Source;

    public static IEnumerable<Finding> Apply(MachineDescription machine)
    {
        if (machine.PartsOf<FeedPart>().FirstOrDefault()?.Gas is not { } gas || LiquidExpansion.GasOverLiquid(gas) is not { } ratio) yield break;
        var liquid = machine.PartsOf<FlaskPart>().Sum(f => f.VolumeM3) + machine.PartsOf<VesselPart>().Sum(v => v.VolumeM3);
        var share = Math.Min(liquid * ratio / machine.Room.VolumeM3, 1);
        var percent = NormalPercent * (1 - share) + (gas == "oxygen" ? 100 * share : 0);
        if (percent < DeficientPercent)
            yield return new("oxygen-poor-room", percent < EvacuatePercent ? Grade.Stop : Grade.Serious, "room", percent, DeficientPercent, "%",
                "oxygen in the room's air at 19.5 % or more after all the liquid has boiled", Source,
                "people faint without warning, at a few percent of oxygen within one or two breaths",
                "work outdoors or in a larger, ventilated room, make less at a time, and hang an oxygen alarm");
        if (percent > EnrichedPercent)
            yield return new("oxygen-rich-room", Grade.Stop, "room", percent, EnrichedPercent, "%",
                "oxygen in the room's air at 23.5 % or less after all the liquid has boiled", Source,
                "clothes and hair burn violently from any spark", "work outdoors, away from anything that burns");
    }
}
