using Coldwright.Machine.Description;

namespace Coldwright.Safety.Rules;

/// <summary>Parts that hold pressure and of which neither a stamp nor a tube is known: said once, all together.</summary>
internal static class UnratedPartsRule
{
    public static IEnumerable<Finding> Apply(MachineDescription machine)
    {
        var unknown = machine.Parts.Where(p => p.MaximumPressurePa is null && HoldsPressure(p)).Select(p => p.Name).ToArray();
        if (unknown.Length > 0)
            yield return new("not-rated", Grade.Caution, string.Join(", ", unknown), null, null, "",
                "every part that holds pressure has a known allowed pressure; nothing is known of these", "the ratings of this program; a part without dimensions or stamp has none",
                "what was not rated may be the weakest part", "read the stamps or ask the makers, and enter maximum-pressure");
    }

    // Vessels have findings of their own; a capillary's wall is thick against its bore.
    private static bool HoldsPressure(Part part) => part switch
    {
        CompressorPart or AftercoolerPart or WarmExchangerPart or PrecoolerPart or BufferPart or ValvePart => true,
        RecuperatorPart r => r.HighTube is null || r.LowTube is null,
        ThrottlePart t => t.Capillary is null,
        CoilPart c => c.Tube is null,
        _ => false,
    };
}
