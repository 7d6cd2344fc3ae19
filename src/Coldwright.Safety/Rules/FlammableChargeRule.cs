using System.Globalization;
using Coldwright.Machine.Description;
using Coldwright.Safety.Flammability;

namespace Coldwright.Safety.Rules;

/// <summary>Flammable charge against the size of the room.</summary>
/// <remarks>
/// IEC 60335-2-40 Annex GG (see <see cref="ChargeLimits"/>). The standard is for made appliances; it serves here as a yardstick.
/// The mixture is taken as charged; what leaks first or last can be richer in combustibles.
/// </remarks>
internal static class FlammableChargeRule
{
    private const string Source = ChargeLimits.Source + "; " + FlammabilityLimits.Source;

    // Share of the lower limit that a well-mixed leak may reach: a quarter, as the refrigerant concentration limit of ASHRAE 34, from memory.
    private const double MixedShare = 0.25;

    public static IEnumerable<Finding> Apply(MachineDescription machine, CautionInputs inputs)
    {
        if (LimitKgPerM3(machine, inputs) is not { } lfl) yield break;
        var height = machine.Charge.ReleaseHeightM;
        var limit = ChargeLimits.AllowedKg(lfl, height, machine.Room.FloorAreaM2);
        var rule = string.Create(CultureInfo.InvariantCulture, $"charge at or below 2.5 LFL^(5/4) h0 A^(1/2), at least 4 m3 x LFL, at most 26 m3 x LFL; here the lower flammability limit LFL is {lfl * 1e3:0.0} g/m3, the height of release h0 {height:0.0} m, the floor A {machine.Room.FloorAreaM2:0} m2");
        if (machine.Charge.MassKg is not { } mass)
        {
            yield return new("flammable-charge-unknown", Grade.Caution, "charge", null, limit, "kg", rule, Source,
                "a leak into a small room can make an explosive cloud", "weigh the charge and enter its mass");
            yield break;
        }
        if (mass > limit)
        {
            var floor = ChargeLimits.FloorM2(mass, lfl, height);
            yield return new("flammable-charge", mass > ChargeLimits.M3Kg(lfl) ? Grade.Stop : Grade.Serious, "charge", mass, limit, "kg", rule, Source,
                "a leak into this room can make an explosive cloud",
                string.Create(CultureInfo.InvariantCulture, $"work in a larger (by the formula {floor:0} m2) or forcibly ventilated room or outdoors, with no source of ignition, or reduce the charge"));
        }
        var mixed = mass / machine.Room.VolumeM3;
        if (mixed > MixedShare * lfl)
            yield return new("flammable-cloud", mixed > lfl ? Grade.Stop : Grade.Caution, "room", mixed, MixedShare * lfl, "kg/m3",
                "the whole charge mixed into the air of the room stays below a quarter of its lower flammability limit", "refrigerant concentration limit of ASHRAE 34, from memory; " + FlammabilityLimits.Source,
                "near the leak the air burns long before the room is mixed", "ventilate, hang a gas alarm low down, and leak-test before charging");
    }

    /// <summary>Lower flammability limit of the charge, kg per m3 of air at room temperature and pressure; null when it does not burn.</summary>
    internal static double? LimitKgPerM3(MachineDescription machine, CautionInputs inputs)
    {
        const double gasConstant = 8.314462618;
        var mixture = machine.Charge.Mixture;
        if (FlammabilityLimits.LowerLimit(mixture) is not { } fraction) return null;
        double molarMass = 0;
        for (var i = 0; i < mixture.Names.Count; i++) molarMass += mixture.MoleFractions[i] * inputs.MolarMassKgPerMol(mixture.Names[i]);
        return fraction * molarMass * machine.Room.PressurePa / (gasConstant * machine.Room.TemperatureK);
    }
}
