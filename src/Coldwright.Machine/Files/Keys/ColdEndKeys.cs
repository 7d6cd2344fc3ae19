using Coldwright.Quantities;
using static Coldwright.Machine.Files.Keys.MachineKeys;

namespace Coldwright.Machine.Files.Keys;

/// <summary>The keys of coil, vessel and cold box.</summary>
public static class ColdEndKeys
{
    /// <summary>Metal through the wall of a cold box.</summary>
    public static FileSection Penetration { get; } = new("penetration",
    [
        new("material", new MaterialForm(), true, "What it is made of."),
        Required("area", (QuantityKind.Area with { Example = "24 mm2" }).Above(0, 1), "Cross-section of the metal, all pieces together."),
        Required("length", QuantityKinds.Length, "Length inside the wall."),
    ]);

    /// <summary>One layer of a cold box.</summary>
    public static FileSection Layer { get; } = new("layer",
    [
        new("material", new MaterialForm(), true, "What it is made of."),
        Required("thickness", (QuantityKind.Length with { Example = "90 mm" }).Above(0, 2), "Its thickness."),
        Optional("moisture", QuantityKind.Fraction.Between(0, 0.15), "Water in it, as a share of the volume; dry when left out."),
        new("cell-gas", new ChoiceForm("air", "nitrogen", "carbon-dioxide", "helium", "R134a", "isopentane", "vacuum"), false,
            "Gas in the cells of polyurethane foam; when left out, the material's own figures hold."),
    ]);

    /// <summary>Keys of the coil.</summary>
    internal static IReadOnlyList<FileKey> Coil { get; } =
    [
        Optional("difference", QuantityKinds.Difference, "What is cooled is warmer than the mixture leaving the coil by this; or describe the coil by tube and length."),
        new("tube", new TubeForm(), false, "Tube."),
        Optional("length", QuantityKinds.Length, "Tube length."),
        Optional("coil-diameter", (QuantityKind.Length with { Example = "40 mm" }).Above(0, 10), "Mean diameter of the turns."),
        Optional("turns", (QuantityKind.Number with { Example = "24" }).Above(0, 10000), "Number of turns."),
        new("place", new ChoiceForm("inside", "around"), false, "Inside the vessel, or soldered around vessel or block."),
    ];

    /// <summary>How the coil's heat transfer may be described.</summary>
    internal static IReadOnlyList<KeyNeed> CoilNeeds { get; } = [new(["difference"], ["tube", "length"])];

    /// <summary>Keys of the vessel.</summary>
    internal static IReadOnlyList<FileKey> Vessel { get; } =
    [
        new("tube", new TubeForm(), true, "Tube its body is made of."),
        Required("length", (QuantityKind.Length with { Example = "320 mm" }).Above(0, 20), "Inside length of the body."),
        new("caps", new ChoiceForm("flat", "domed"), false, "Shape of its ends."),
        Optional("cap-thickness", (QuantityKind.Length with { Example = "6 mm" }).Above(0, 0.2), "Thickness of its ends; safety rates them by it."),
        new("wall-material", new MaterialForm(), false, "What it is made of."),
    ];

    /// <summary>Keys of the cold box.</summary>
    internal static IReadOnlyList<FileKey> ColdBox { get; } =
    [
        new("inside", new BoxForm(), true, "Inside length, width and height."),
        Optional("wall", (QuantityKind.Length with { Example = "150 mm" }).Above(0, 5), "Thickness of the insulation."),
        new("insulation", new MaterialForm(), false, "Insulation material."),
        new("layers", new SectionListForm(Layer), false, "Layers of the wall from inside to outside, instead of wall and insulation."),
        new("penetrations", new SectionListForm(Penetration), false, "Wires and supports through the wall; the tubes among the lines are counted by themselves."),
    ];

    /// <summary>How the cold box's wall may be described.</summary>
    internal static IReadOnlyList<KeyNeed> ColdBoxNeeds { get; } = [new(["wall", "insulation"], ["layers"])];
}
