using Coldwright.Quantities;
using static Coldwright.Machine.Files.Keys.MachineKeys;

namespace Coldwright.Machine.Files.Keys;

/// <summary>The keys of a recuperator.</summary>
internal static class RecuperatorKeys
{
    /// <summary>Its keys.</summary>
    public static IReadOnlyList<FileKey> Keys { get; } =
    [
        Optional("conductance", QuantityKinds.Conductance, "Overall heat conductance UA; or describe the tubes by arrangement, both tubes and length."),
        new("arrangement", new ChoiceForm("tube-in-tube", "tubes-in-tube", "side-by-side"), false, "How the tubes lie; the conductance is then worked out along the length."),
        new("high-tube", new TubeForm(), false, "Tube that holds the high pressure."),
        new("low-tube", new TubeForm(), false, "Tube that holds the low pressure."),
        new("tubes", new WholeNumberForm(1, 100), false, "Number of equal inner tubes, for tubes-in-tube."),
        Optional("length", QuantityKinds.Length, "Length."),
        Optional("coil-diameter", QuantityKinds.CoilDiameter, "Mean diameter of the coil it is wound to; straight when left out."),
        new("high-side", new ChoiceForm("inner", "outer"), false, "Which tube holds the high pressure; the inner one when left out."),
        Optional("bond-width", (QuantityKind.Length with { Example = "4 mm" }).Above(0, 0.1), "Width of the solder between tubes side by side."),
        Optional("bond-thickness", (QuantityKind.Length with { Example = "0.2 mm" }).Between(0, 0.01), "Mean thickness of that solder; none when left out."),
        Optional("insulation-conductance", QuantityKinds.ConductancePerLength, "Heat conductance of the insulation around it, per length of exchanger: heat that leaks in on the way."),
        Optional("roughness", QuantityKinds.Roughness, "Roughness of the tubes; that of drawn tube when left out."),
        Optional("low-side-pressure-drop", QuantityKinds.Drop, "Pressure drop of the low-pressure stream."),
    ];

    /// <summary>How its heat transfer may be described.</summary>
    public static IReadOnlyList<KeyNeed> Needs { get; } = [new(["conductance"], ["arrangement", "high-tube", "low-tube", "length"])];
}
