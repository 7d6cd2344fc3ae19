using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;
using Coldwright.Materials.Solids;

namespace Coldwright.Simulation.Parts;

/// <summary>The wall of a cold box as the machine file describes it, as layers of the insulation model.</summary>
internal static class BoxLayers
{
    private const string Foam = "polyurethane-foam";

    /// <summary>Layers from inside to outside.</summary>
    /// <exception cref="ArgumentException">A cell gas in a material that is not modelled by its gas, or moisture in one whose law is not known.</exception>
    public static IReadOnlyList<InsulationLayer> Of(ColdBoxPart box) => box.Layers.Count > 0
        ? [.. box.Layers.Select(Layer)]
        : [ConductingLayer.Of(SolidLibrary.Default.Find(box.Insulation), box.WallM)];

    /// <summary>Materials of the layers.</summary>
    public static IEnumerable<string> Names(ColdBoxPart box) => box.Layers.Count > 0 ? box.Layers.Select(l => l.Material) : [box.Insulation];

    private static ConductingLayer Layer(LayerDescription l)
    {
        var solid = SolidLibrary.Default.Find(l.Material);
        var water = l.MoistureShare > 0 ? Water(solid.Name, l.MoistureShare) : null;
        if (l.CellGas is null) return ConductingLayer.Of(solid, l.ThicknessM, water);
        if (solid.Name != Foam) throw new ArgumentException($"the layer of {l.Material} gives a cell-gas; only {Foam} is modelled by the gas in its cells, leave it out");
        return ConductingLayer.Of(CellularInsulation.Polyurethane(Gas(l.CellGas)), l.ThicknessM, solid, water);
    }

    // the standard tells expanded from extruded polystyrene; the foams of the library are expanded
    private static Moisture Water(string material, double share) => material switch
    {
        _ when material.StartsWith("polyurethane", StringComparison.Ordinal) => Moisture.InPolyurethane(share),
        _ when material.StartsWith("polystyrene", StringComparison.Ordinal) => Moisture.InExpandedPolystyrene(share),
        "glass-wool" => Moisture.InMineralWool(share),
        _ => throw new ArgumentException($"the layer of {material} gives moisture; how water changes it is known for polyurethane, polystyrene and wool only"),
    };

    private static CellGas Gas(string word) => word switch
    {
        "air" => CellGas.Air,
        "nitrogen" => CellGas.Nitrogen,
        "carbon-dioxide" => CellGas.CarbonDioxide,
        "helium" => CellGas.Helium,
        "R134a" => CellGas.R134a,
        "isopentane" => CellGas.Isopentane,
        "vacuum" => CellGas.Vacuum,
        _ => throw new ArgumentException($"cell-gas '{word}' is not known"),
    };
}
