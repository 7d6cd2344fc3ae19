using Coldwright.Machine.Description;

namespace Coldwright.Safety.Rules;

/// <summary>Air that gets into the loop: through a suction below room pressure, or left over from filling.</summary>
internal static class AirInLoopRule
{
    // Oxygen share in the first gas let in, once it has reached room pressure: far below the 8.5 to 10.7 % that hydrocarbons need to burn in
    // nitrogen (ASTM E2079-19). The 1 % is our own margin.
    private const double ResidualOxygen = 0.01;
    private const double AirOxygen = 0.2095;

    public static IEnumerable<Finding> Apply(MachineDescription machine, CautionInputs inputs)
    {
        var burns = machine.Charge.Mixture.Names.Zip(machine.Charge.Mixture.MoleFractions).Any(p => p.Second > 0 && FlammabilityLimits.Burns(p.First));
        var (low, room) = (machine.Operation.LowPressurePa, machine.Room.PressurePa);
        if (low < room)
            yield return new("air-into-loop", burns ? Grade.Serious : Grade.Caution, "machine", low, room, "Pa",
                "suction at or above room pressure, so that a leak blows out and is found", "limiting oxygen of methane, ethylene and propane in nitrogen: 10.7, 8.5 and 10.5 % (ASTM E2079-19, after Zlochower); that no air may come in at all is our assumption",
                burns ? "a leak draws air into hydrocarbons, and the compressor heats and squeezes the mixture" : "a leak draws in air and moisture, which freeze in the throttle",
                "raise the low pressure above that of the room, or leak-test at vacuum and watch oxygen in the charge")
            { AtLeast = true };

        if (!burns || !machine.PartsOf<CompressorPart>().Any()) yield break;
        var limit = ResidualOxygen / AirOxygen * room;
        const string rule = "loop evacuated before flammable gas goes in: its oxygen below 1 % when the first gas has reached room pressure";
        const string source = "limiting oxygen of methane, ethylene and propane in nitrogen: 10.7, 8.5 and 10.5 % (ASTM E2079-19, after Zlochower); the 1 % is our own margin";
        const string advice = "enter evacuated-to; evacuate to 100 Pa or lower, let nitrogen in, evacuate again, and fill nitrogen before anything that burns";
        if (machine.Charge.EvacuatedToPa is not { } evacuated)
            yield return new("evacuate-first", Grade.Note, "charge", null, limit, "Pa", rule, source, "air and fuel go through the compressor together", advice);
        else if (evacuated > limit)
            yield return new("residual-air", Grade.Serious, "charge", evacuated, limit, "Pa", rule, source, "air and fuel go through the compressor together", advice);
    }
}
