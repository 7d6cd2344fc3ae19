using Coldwright.Machine.Description;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files.Parts;

/// <summary>Makes coil, vessel and cold box.</summary>
internal static class ColdEndReader
{
    private const int MostLayers = 10;

    /// <summary>The coil.</summary>
    public static CoilPart Coil(SectionReader r, string name)
    {
        var part = new CoilPart
        {
            Name = name,
            Tube = r.Tube("tube"),
            LengthM = r.OptionalQuantity("length"),
            CoilDiameterM = r.OptionalQuantity("coil-diameter"),
            Turns = r.OptionalQuantity("turns"),
            Place = r.Choice("place") switch
            {
                "inside" => CoilPlace.Inside,
                "around" => CoilPlace.Around,
                _ => null,
            },
        };
        if (part.CoilDiameterM < 2 * part.Tube?.OutsideDiameterM)
            r.Complain("coil-diameter", $"coil-diameter: {QuantityText.Length(part.CoilDiameterM.Value)} is less than twice the tube's {QuantityText.Length(part.Tube!.OutsideDiameterM)}");
        // Ends and pitch make a coil longer than its circles, but not by half.
        else if (part.Turns * Math.PI * part.CoilDiameterM is { } wound && (wound > 1.5 * part.LengthM || wound < part.LengthM / 1.5))
            r.Complain("turns", $"turns: {part.Turns:0.###} turns of {QuantityText.Length(part.CoilDiameterM!.Value)} make {QuantityText.Length(wound)} of tube, but the length is {QuantityText.Length(part.LengthM!.Value)}");
        return r.OptionalQuantity("difference") is { } difference ? part with { DifferenceK = difference } : part;
    }

    /// <summary>The vessel.</summary>
    public static VesselPart Vessel(SectionReader r, string name) => new()
    {
        Name = name,
        Tube = r.Tube("tube") ?? new Tube("", double.NaN, double.NaN),
        LengthM = r.Quantity("length"),
        Caps = r.Choice("caps") switch
        {
            "flat" => CapShape.Flat,
            "domed" => CapShape.Domed,
            _ => null,
        },
        CapThicknessM = r.OptionalQuantity("cap-thickness"),
        WallMaterial = r.Has("wall-material") ? r.Material("wall-material") : null,
    };

    /// <summary>The cold box.</summary>
    public static ColdBoxPart ColdBox(SectionReader r, string name)
    {
        if (r.Has("layers"))
            foreach (var key in (string[])["wall", "insulation"])
                if (r.Has(key)) r.Complain(key, $"part '{name}' gives layers, which say what the wall is made of; take '{key}' out");
        var layers = r.Sections("layers", $"a layer of part '{name}'").Select(l => Layer(l.Reader)).ToArray();
        if (r.Has("layers") && layers.Length is 0 or > MostLayers)
            r.Complain("layers", $"part '{name}' has {layers.Length} layers; 1 to {MostLayers} are expected");
        var part = new ColdBoxPart
        {
            Name = name,
            Inside = r.Box("inside"),
            WallM = r.OptionalQuantity("wall") ?? layers.Sum(l => l.ThicknessM),
            Layers = layers,
            Penetrations = r.Sections("penetrations", $"a penetration of part '{name}'")
                .Select(p => (p.Reader.Material("material"), p.Reader.Quantity("area"), p.Reader.Quantity("length"))).ToArray(),
        };
        return r.Has("insulation") ? part with { Insulation = r.Material("insulation") } : part;
    }

    private static LayerDescription Layer(SectionReader r)
    {
        var layer = new LayerDescription
        {
            Material = r.Material("material"),
            ThicknessM = r.Quantity("thickness"),
            MoistureShare = r.Quantity("moisture", 0),
            CellGas = r.Choice("cell-gas"),
        };
        if (layer.CellGas is not null && layer.Material.Length > 0 && !layer.Material.StartsWith("polyurethane-foam", StringComparison.Ordinal))
            r.Complain("cell-gas", $"cell-gas: the gas in the cells is calculated for polyurethane-foam only; for {layer.Material} the figures of the material hold as they are");
        return layer;
    }
}
