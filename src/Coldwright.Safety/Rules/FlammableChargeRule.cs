using Coldwright.Machine.Description;

namespace Coldwright.Safety.Rules;

/// <summary>Flammable charge against the size of the room.</summary>
/// <remarks>
/// IEC 60335-2-40 Annex GG: m_max = 2.5 L^(5/4) h0 A^(1/2), L the lower flammability limit in kg/m3, h0 the release height in m, A the floor
/// in m2, for charges above m1 = 4 m3 x L; nothing above m2 = 26 m3 x L. The standard is for made appliances; it serves here as a yardstick.
/// The mixture is taken as charged; what leaks first or last can be richer in combustibles.
/// </remarks>
internal static class FlammableChargeRule
{
    private const string Source = "IEC 60335-2-40 Annex GG; " + FlammabilityLimits.Source;

    public static IEnumerable<Finding> Apply(MachineDescription machine, CautionInputs inputs)
    {
        if (LimitKgPerM3(machine, inputs) is not { } lfl) yield break;
        var free = 4 * lfl;
        var most = 26 * lfl;
        var room = 2.5 * Math.Pow(lfl, 1.25) * inputs.ReleaseHeightM * Math.Sqrt(machine.Room.FloorAreaM2);
        var limit = Math.Min(Math.Max(room, free), most);
        const string rule = "flammable charge at or below 2.5 LFL^(5/4) h0 A^(1/2), at least 4 m3 x LFL, at most 26 m3 x LFL";
        if (machine.Charge.MassKg is not { } mass)
            yield return new("flammable-charge-unknown", Grade.Caution, "charge", null, limit, "kg", rule, Source,
                "a leak into a small room can make an explosive cloud", "weigh the charge and enter its mass");
        else if (mass > limit)
            yield return new("flammable-charge", Grade.Serious, "charge", mass, limit, "kg", rule, Source,
                "a leak into this room can make an explosive cloud",
                "work in a larger or forcibly ventilated room or outdoors, with no source of ignition, or reduce the charge");
    }

    /// <summary>Lower flammability limit of the charge, kg per m3 of air at room temperature and pressure; null when it does not burn.</summary>
    private static double? LimitKgPerM3(MachineDescription machine, CautionInputs inputs)
    {
        const double gasConstant = 8.314462618;
        var mixture = machine.Charge.Mixture;
        if (FlammabilityLimits.LowerLimit(mixture) is not { } fraction) return null;
        double molarMass = 0;
        for (var i = 0; i < mixture.Names.Count; i++) molarMass += mixture.MoleFractions[i] * inputs.MolarMassKgPerMol(mixture.Names[i]);
        return fraction * molarMass * machine.Room.PressurePa / (gasConstant * machine.Room.TemperatureK);
    }
}
