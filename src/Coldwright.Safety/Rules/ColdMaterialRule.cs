using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;
using Coldwright.Safety.Layout;

namespace Coldwright.Safety.Rules;

/// <summary>What cold does to walls, seals and skin.</summary>
internal static class ColdMaterialRule
{
    private const string Source = "Wigley, Basic Cryogenics and Materials, NASA Contractor Report 177932 (1985)";

    // Face-centred cubic metals stay tough.
    private static readonly string[] Tough = ["copper", "stainless", "aluminium", "brass"];

    public static IEnumerable<Finding> Apply(MachineLayout layout)
    {
        var machine = layout.Machine;
        foreach (var vessel in machine.PartsOf<VesselPart>())
            if (vessel.WallMaterial is { } wall && !Tough.Any(t => wall.StartsWith(t, StringComparison.Ordinal)))
                yield return new("brittle-wall", Grade.Serious, vessel.Name, null, null, "",
                    $"cold pressure parts of copper, austenitic stainless steel, aluminium or brass, which stay tough; not of {wall}", Source,
                    "a brittle wall shatters instead of bulging", "make it of copper or austenitic stainless steel");

        var cold = machine.Lines.Where(layout.IsWet).SelectMany(l => new[] { layout.PartAt(l.From), layout.PartAt(l.To) }).Where(p => p is ValvePart or ReliefPart).Select(p => p!.Name).Distinct().ToArray();
        if (cold.Length > 0)
            yield return new("cold-seals", Grade.Note, string.Join(", ", cold), null, null, "",
                "valves and relief devices on cold lines stand warm at the end of a length of thin tube, or have seals made for the temperature", Source,
                "rubber hardens and shrinks until it leaks, and a relief valve freezes shut", "lead the tube up and out of the cold; use polytetrafluoroethylene packing held by springs; copper and hard solder for joints that get cold");

        var handled = machine.PartsOf<FlaskPart>().FirstOrDefault()?.Name
            ?? ColdBoxContents.Crossing(machine).FirstOrDefault(c => c.Inner is VesselPart && layout.PartAt(c.Line.From) == c.Inner).Inner?.Name;
        if (handled is not null)
            yield return new("cold-burns", Grade.Caution, handled, null, null, "",
                "cold liquid and bare cold metal only with face shield, loose insulating gloves and covered skin", Source + "; protective equipment: OSHA 29 CFR 1910.132 to 138, from memory",
                "frostbite and blindness from splashes; skin freezes to bare metal", "wear face shield and gloves whenever liquid is discharged or carried");
    }
}
