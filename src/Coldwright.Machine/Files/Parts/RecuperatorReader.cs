using Coldwright.Machine.Description;

namespace Coldwright.Machine.Files.Parts;

/// <summary>Makes a recuperator and checks that its tubes can lie as described.</summary>
internal static class RecuperatorReader
{
    /// <summary>The recuperator.</summary>
    public static RecuperatorPart Read(SectionReader r, string name)
    {
        var tubes = r.WholeNumber("tubes");
        var part = new RecuperatorPart
        {
            Name = name,
            Arrangement = r.Choice("arrangement") switch
            {
                "tube-in-tube" => RecuperatorArrangement.TubeInTube,
                "tubes-in-tube" => RecuperatorArrangement.TubesInTube,
                "side-by-side" => RecuperatorArrangement.SideBySide,
                _ => null,
            },
            HighTube = r.Tube("high-tube"),
            LowTube = r.Tube("low-tube"),
            Tubes = tubes ?? 1,
            LengthM = r.OptionalQuantity("length"),
            CoilDiameterM = r.OptionalQuantity("coil-diameter"),
            HighSide = r.Choice("high-side") == "outer" ? HighSide.Outer : HighSide.Inner,
            BondWidthM = r.OptionalQuantity("bond-width"),
            BondThicknessM = r.Quantity("bond-thickness", 0),
            InsulationConductanceWPerMK = r.OptionalQuantity("insulation-conductance"),
            RoughnessM = r.OptionalQuantity("roughness"),
            LowSidePressureDropPa = r.Quantity("low-side-pressure-drop", 0),
        };
        if (r.OptionalQuantity("conductance") is { } conductance) part = part with { ConductanceWPerK = conductance };
        // A number of tubes that was refused is not looked at again.
        if (tubes is not null || !r.Has("tubes")) Check(r, part);
        return part;
    }

    private static void Check(SectionReader r, RecuperatorPart part)
    {
        if (r.Has("conductance")) r.Together("arrangement", "high-tube", "low-tube", "length");
        foreach (var key in (string[])["tubes", "coil-diameter", "high-side", "bond-width", "bond-thickness", "insulation-conductance", "roughness"]) r.Together(key, "arrangement");
        if (part.Arrangement is not { } arrangement) return;
        if (arrangement == RecuperatorArrangement.TubesInTube && part.Tubes == 1)
            r.Complain(r.Has("tubes") ? "tubes" : "arrangement", $"part '{part.Name}' has tubes-in-tube, so it needs the number of inner tubes, 2 or more ('tubes')");
        else if (arrangement != RecuperatorArrangement.TubesInTube && part.Tubes > 1)
            r.Complain("tubes", $"part '{part.Name}' has {part.Tubes} tubes, which belong to arrangement tubes-in-tube");
        else if (arrangement == RecuperatorArrangement.SideBySide && !r.Has("bond-width"))
            r.Complain("arrangement", $"part '{part.Name}' has its tubes side by side, so it needs the width of the solder between them ('bond-width')");
        else if (arrangement == RecuperatorArrangement.SideBySide && r.Has("high-side"))
            r.Complain("high-side", $"part '{part.Name}' has its tubes side by side; neither is the inner one");
        else if (arrangement != RecuperatorArrangement.SideBySide && (r.Has("bond-width") || r.Has("bond-thickness")))
            r.Complain(r.Has("bond-width") ? "bond-width" : "bond-thickness", $"part '{part.Name}' has no tubes side by side, so there is no solder between them");
        else if (PartGeometry.Problem(part) is { } problem)
            r.Complain("arrangement", $"part '{part.Name}': {problem}");
    }
}
