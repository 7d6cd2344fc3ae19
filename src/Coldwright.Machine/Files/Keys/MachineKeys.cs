using Coldwright.Quantities;

namespace Coldwright.Machine.Files.Keys;

/// <summary>The keys of <c>machine.yaml</c> outside the parts.</summary>
public static class MachineKeys
{
    /// <summary>Highest pressure a machine file may name, Pa: far above any tube of this trade, far below where the equations end.</summary>
    internal const double HighestPressurePa = 3e7;

    /// <summary>Pressure of a machine file.</summary>
    internal static QuantityKind PressureInMachine { get; } = QuantityKind.Pressure.Above(0, HighestPressurePa);

    /// <summary>The room.</summary>
    public static FileSection Room { get; } = new("room",
    [
        Required("temperature", (QuantityKind.Temperature with { Example = "20 °C" }).Between(230, 330), "Air temperature of the room."),
        Required("pressure", QuantityKind.AbsolutePressure.Between(4e4, 1.2e5), "Barometric pressure, absolute; gauge pressures are counted from it."),
        Required("floor-area", QuantityKind.Area.Above(0, 1e5), "Floor area of the room; decides what a leak of gas does to the air."),
        Required("height", (QuantityKind.Length with { Example = "2.6 m" }).Above(0, 50), "Ceiling height of the room."),
        Optional("humidity", (QuantityKind.Fraction with { Example = "50 %" }).Above(0, 1), "Relative humidity of the room's air; for dew on the box."),
        Optional("air-changes", QuantityKind.Rate.Between(0, 1), "Fresh-air changes per hour; none when left out."),
    ]);

    /// <summary>The loop's charge.</summary>
    public static FileSection Charge { get; } = new("charge",
    [
        new("mixture", new MixtureForm(), true, "The circulating mixture, names with fractions that sum to 1."),
        new("fractions", new ChoiceForm("mole", "mass"), false, "Whether the fractions are by mole (as when left out) or by mass."),
        Optional("mass", QuantityKind.Mass.Above(0, 1000), "Mass of gas in the loop, when it was weighed."),
        Optional("release-height", (QuantityKind.Length with { Example = "0.9 m" }).Between(0.6, 2.2), "Height above the floor of the lowest part that holds it; 0.6 m, a cooler on the floor, when left out."),
        Optional("evacuated-to", (QuantityKind.AbsolutePressure with { Example = "0.5 mbara" }).Above(0, 1.2e5), "Absolute pressure to which the loop is evacuated before it is filled."),
    ]);

    /// <summary>The pressures it runs at.</summary>
    public static FileSection Operation { get; } = new("operation",
    [
        Required("high-pressure", PressureInMachine, "High side, before the recuperator, as it runs or is meant to run."),
        Required("low-pressure", PressureInMachine with { Example = "3.6 barg" }, "Low side, at the cold end and at the compressor's suction, as it runs or is meant to run."),
        new("hold", new ChoiceForm("neither", "high", "low", "both"), false, "Which of the two pressures a rating holds as given; neither: both follow from hardware and charge; both, as when left out: a rating between given pressures."),
        new("solve-for", new ChoiceForm("charge", "throttle"), false, "What follows from a pressure that is held: the charge, as when left out, or the throttle's length or opening."),
        Optional("standstill-pressure", PressureInMachine with { Example = "12 barg" }, "Pressure of the whole loop after it has stood warm; the compressor starts against it."),
    ]);

    /// <summary>One line.</summary>
    public static FileSection Line { get; } = new("line",
    [
        new("from", new PortForm(), true, "Upstream port: a part's name, or name.stream for exchangers (high, low, feed)."),
        new("to", new PortForm(), true, "Downstream port."),
        new("tube", new TubeForm(), false, "Tube size; left out when the two parts are joined directly."),
        Optional("length", QuantityKind.Length.Between(0, 1000), "Length of the line."),
        new("in", new ChoiceForm("room", "cold-box"), false, "Where the line runs; when left out, the cold box if both ends are cold parts, else the room."),
    ]);

    /// <summary>The whole file.</summary>
    public static FileSection Root { get; } = new("machine",
    [
        new("name", new TextForm(), true, "Your name for the cooler."),
        new("room", new SectionForm(Room), true, "The room it stands in."),
        new("charge", new SectionForm(Charge), true, "The gas mixture of the loop."),
        new("operation", new SectionForm(Operation), true, "The two pressures it runs at."),
        new("parts", new PartsForm(), true, "The parts by name; each has a kind."),
        new("lines", new SectionListForm(Line), true, "The lines that join the parts, in the direction of flow."),
    ]);

    internal static FileKey Required(string name, QuantityKind kind, string meaning) => new(name, new QuantityForm(kind), true, meaning);

    internal static FileKey Optional(string name, QuantityKind kind, string meaning) => new(name, new QuantityForm(kind), false, meaning);
}
