using Coldwright.Machine.Description;

namespace Coldwright.Safety.Rules;

/// <summary>Refrigerant in used appliances, and work on systems that hold or held something that burns.</summary>
internal static class RefrigerantHandlingRule
{
    public static IEnumerable<Finding> Apply(MachineDescription machine)
    {
        foreach (var (part, refrigerant) in Held(machine))
            if (Refrigerants.IsFluorinated(refrigerant))
                yield return new("refrigerant-recovery", Grade.Caution, part, null, null, "",
                    $"{refrigerant} is taken out of an appliance only by licensed people with a recovery machine, never let off",
                    "US Clean Air Act section 608, 40 CFR 82.154 to 82.161; Regulation (EU) 2024/573, from memory",
                    "letting it off is an offence; it displaces air in low places and makes acid in a flame", "have it recovered before the first pipe is cut, and keep the receipt");

        var burning = machine.Charge.Mixture.Names.Zip(machine.Charge.Mixture.MoleFractions).Any(p => p.Second > 0 && FlammabilityLimits.Burns(p.First));
        var parts = (burning ? new[] { "charge" } : []).Concat(Held(machine).Where(h => Refrigerants.Burns(h.Refrigerant)).Select(h => h.Part)).Distinct().ToArray();
        if (parts.Length > 0)
            yield return new("brazing-flammables", Grade.Caution, string.Join(", ", parts), null, null, "",
                "a system that holds or held something that burns is emptied, swept with nitrogen and opened with a tube cutter, and brazed with nitrogen flowing through it; its oil goes on giving off gas",
                "IEC 60335-2-40 Annex DD (work on systems with flammable refrigerants: recover, evacuate, sweep with oxygen-free nitrogen before and during brazing)",
                "what is left in tube and oil burns or explodes at the torch", "vent outdoors, evacuate, break the vacuum with nitrogen twice, cut, never unbraze; a gas alarm on the bench");
    }

    private static IEnumerable<(string Part, string Refrigerant)> Held(MachineDescription machine)
    {
        foreach (var compressor in machine.PartsOf<CompressorPart>())
            if (compressor.Nameplate is { } plate) yield return (compressor.Name, plate.Refrigerant);
        foreach (var precooler in machine.PartsOf<PrecoolerPart>())
            if (precooler.Loop is { } loop) yield return (precooler.Name, loop.Refrigerant);
        foreach (var (name, fraction) in machine.Charge.Mixture.Names.Zip(machine.Charge.Mixture.MoleFractions))
            if (fraction > 0 && Refrigerants.IsFluorinated(name)) yield return ("charge", name);
    }
}
