using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Simulation.Parts.Compression;

namespace Coldwright.Simulation.Parts;

/// <summary>What the file must say about a part before its own model can answer.</summary>
internal static class PartNeeds
{
    /// <summary>Throws when something is missing.</summary>
    /// <exception cref="MissingKeysException">Names every key to add.</exception>
    public static void Check(Part part, LoopLayout layout)
    {
        var missing = Missing(part, layout).ToArray();
        if (missing.Length > 0) throw new MissingKeysException(part.Name, Kinds.Of(part), missing);
    }

    /// <summary>Every key that is missing.</summary>
    public static IEnumerable<MissingKey> Missing(Part part, LoopLayout layout) => part switch
    {
        CompressorPart p => Of(p),
        PrecoolerPart p => Of(p),
        RecuperatorPart p => Of(p),
        ThrottlePart p => Of(p),
        CoilPart or VesselPart => ColdEnd(part, layout),
        BufferPart p => Of(p),
        _ => [],
    };

    private static IEnumerable<MissingKey> Of(CompressorPart p)
    {
        if (!DescribedCompressor.IsEnough(p.DisplacementM3, p.Nameplate, p.RatingSheet))
            yield return new(p.Name, "displacement and speed, or nameplate, or rating-sheet", "nameplate: {rating: compressor, capacity: 2.6 kW, refrigerant: R410A}");
    }

    private static IEnumerable<MissingKey> Of(PrecoolerPart p)
    {
        if (p.Loop is not { } loop)
            yield return new(p.Name, "loop", "loop: {refrigerant: propane, type: reciprocating, displacement: 27 cm3, condenser-conductance: 65 W/K, evaporator-conductance: 30 W/K, superheat: 6 K}");
        else
        {
            if (!DescribedCompressor.IsEnough(loop.DisplacementM3, loop.Nameplate, loop.RatingSheet))
                yield return new($"the loop of {p.Name}", "displacement, or nameplate, or rating-sheet", "displacement: 27 cm3");
            if (loop is { SuperheatK: null, Capillary: null, Valve: null })
                yield return new($"the loop of {p.Name}", "superheat, or capillary, or valve", "superheat: 6 K, for a thermostatic valve");
        }
    }

    private static IEnumerable<MissingKey> Of(RecuperatorPart p)
    {
        if (p.Arrangement is null) yield return new(p.Name, "arrangement", "arrangement: tube-in-tube, or tubes-in-tube, or side-by-side");
        if (p.HighTube is null) yield return new(p.Name, "high-tube", "high-tube: 3/8 in ACR");
        if (p.LowTube is null) yield return new(p.Name, "low-tube", "low-tube: 3/4 in ACR");
        if (p.LengthM is null) yield return new(p.Name, "length", "length: 16 m");
        if (p is { Arrangement: RecuperatorArrangement.SideBySide, BondWidthM: null }) yield return new(p.Name, "bond-width", "bond-width: 4 mm");
    }

    private static IEnumerable<MissingKey> Of(ThrottlePart p)
    {
        if (p is { Capillary: null, Valve: null })
            yield return new(p.Name, "capillary, or valve", "capillary: {bore: 0.9 mm, length: 2.6 m}, or valve: {kv: 0.012}");
    }

    private static IEnumerable<MissingKey> ColdEnd(Part asked, LoopLayout layout)
    {
        var coil = layout.Coil;
        if (layout.Vessel is null) yield return new("the machine", "a part of kind vessel with its feed", "vessel: {kind: vessel, tube: 2-1/8 in type L, length: 320 mm}; the coil's model needs what the coil cools");
        if (coil.Tube is null) yield return new(coil.Name, "tube", "tube: 1/4 in ACR");
        if (coil.LengthM is null) yield return new(coil.Name, "length", "length: 3.5 m");
        if (coil.CoilDiameterM is null && (coil.Place ?? CoilPlace.Inside) == CoilPlace.Inside) yield return new(coil.Name, "coil-diameter", "coil-diameter: 40 mm");
    }

    private static IEnumerable<MissingKey> Of(BufferPart p)
    {
        if (p.ValveBoreM is null) yield return new(p.Name, "valve-bore", "valve-bore: 2 mm");
        if (p.FullyOpenPressurePa is null) yield return new(p.Name, "fully-open-pressure", "fully-open-pressure: 20.5 barg");
    }
}
