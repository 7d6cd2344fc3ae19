using System.Globalization;
using Coldwright.Machine.Description;
using Coldwright.Safety.Air;

namespace Coldwright.Safety.Rules;

/// <summary>Air of the room after a spill of everything liquid, after a loss of the charge, and while product gas escapes.</summary>
/// <remarks>Sudden: O2 = 20.95 % (Vr - Vg) / Vr, Vr the room, Vg the gas made; spilled oxygen adds Vg; ventilation is left out, which is cautious.
/// Continuous: the Fermilab manual's equations with the room's air changes, after a working day.</remarks>
internal static class RoomAirRule
{
    private const double NormalPercent = 20.95;
    private const double WorkingDayS = 8 * 3600;
    private const double GasConstant = 8.314462618;
    private const string Limits = "OSHA 29 CFR 1910.134 and 1910.146: below 19.5 % deficient, above 23.5 % enriched; ";
    private const string Source = Limits + "room formula of university safety offices; gas made: " + LiquidExpansion.Source;
    private const string PoorRemedy = "work outdoors or in a larger, ventilated room, make less at a time, and hang an oxygen alarm";

    public static IEnumerable<Finding> Apply(MachineDescription machine, CautionInputs inputs)
    {
        var room = machine.Room;
        if (machine.PartsOf<FeedPart>().FirstOrDefault()?.Gas is { } gas)
        {
            if (LiquidExpansion.GasOverLiquid(gas) is { } ratio)
                foreach (var finding in Spill(machine, gas, ratio))
                    yield return finding;
            if (gas != "oxygen" && inputs.VentedProductKgPerS is > 0 and { } vented)
            {
                var leak = GasM3(room, vented, inputs.MolarMassKgPerMol(gas));
                var oxygen = 100 * RoomOxygen.WithAirBlownIn(room.VolumeM3, room.AirChangesPerHour * room.VolumeM3 / 3600, leak, WorkingDayS, NormalPercent / 100);
                if (OxygenLevel.GradeOf(oxygen) is { } grade)
                    yield return new("oxygen-poor-while-running", grade, "room", oxygen, OxygenLevel.DeficientPercent, "%",
                        string.Create(CultureInfo.InvariantCulture, $"oxygen in the room's air at 19.5 % or more after eight hours of letting out {leak * 3600:0.00} m3/h with {room.AirChangesPerHour:0.##} air changes an hour"),
                        Limits + RoomOxygen.Source, OxygenLevel.Effect(oxygen), "lead the gas outdoors through a pipe, ventilate, and hang an oxygen alarm")
                    { AtLeast = true };
            }
        }
        if (machine.Charge.MassKg is { } mass)
        {
            var mixture = machine.Charge.Mixture;
            var molarMass = mixture.Names.Zip(mixture.MoleFractions).Sum(p => p.Second * inputs.MolarMassKgPerMol(p.First));
            var oxygen = 100 * RoomOxygen.AfterSuddenRelease(room.VolumeM3, GasM3(room, mass, molarMass), NormalPercent / 100);
            if (OxygenLevel.GradeOf(oxygen) is { } grade)
                yield return new("oxygen-poor-charge", grade, "room", oxygen, OxygenLevel.DeficientPercent, "%",
                    "oxygen in the room's air at 19.5 % or more after the whole charge has escaped", Limits + RoomOxygen.Source,
                    OxygenLevel.Effect(oxygen), "vent the charge outdoors only, work in a larger room, and hang an oxygen alarm")
                { AtLeast = true };
        }
    }

    private static IEnumerable<Finding> Spill(MachineDescription machine, string gas, double ratio)
    {
        var liquid = machine.PartsOf<FlaskPart>().Sum(f => f.VolumeM3) + machine.PartsOf<VesselPart>().Sum(v => v.VolumeM3);
        var share = Math.Min(liquid * ratio / machine.Room.VolumeM3, 1);
        var percent = NormalPercent * (1 - share) + (gas == "oxygen" ? 100 * share : 0);
        if (OxygenLevel.GradeOf(percent) is { } grade)
            yield return new("oxygen-poor-room", grade, "room", percent, OxygenLevel.DeficientPercent, "%",
                "oxygen in the room's air at 19.5 % or more after all the liquid has boiled", Source, OxygenLevel.Effect(percent), PoorRemedy)
            { AtLeast = true };
        if (percent > OxygenLevel.EnrichedPercent)
            yield return new("oxygen-rich-room", Grade.Stop, "room", percent, OxygenLevel.EnrichedPercent, "%",
                "oxygen in the room's air at 23.5 % or less after all the liquid has boiled", Source,
                "clothes and hair burn violently from any spark", "work outdoors, away from anything that burns");
    }

    private static double GasM3(RoomDescription room, double massKg, double molarMassKgPerMol) =>
        massKg / molarMassKgPerMol * GasConstant * room.TemperatureK / room.PressurePa;
}
