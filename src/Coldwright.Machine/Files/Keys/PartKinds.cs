using Coldwright.Quantities;
using static Coldwright.Machine.Files.Keys.MachineKeys;

namespace Coldwright.Machine.Files.Keys;

/// <summary>The kinds of parts that are known, with their keys and streams.</summary>
public static class PartKinds
{
    private static readonly QuantityKind _difference = QuantityKind.TemperatureDifference.Between(0, 150);
    private static readonly QuantityKind _efficiency = (QuantityKind.Fraction with { Name = "an efficiency" }).Above(0, 1);
    private static readonly QuantityKind _conductance = QuantityKind.Conductance.Above(0, 1e6);
    private static readonly QuantityKind _length = QuantityKind.Length.Above(0, 1000);
    private static readonly QuantityKind _drop = QuantityKind.PressureDifference.Between(0, 1e7);
    private static readonly QuantityKind _power = QuantityKind.Power.Between(0, 1e6);

    /// <summary>Metal through the wall of a cold box.</summary>
    public static FileSection Penetration { get; } = new("penetration",
    [
        new("material", new MaterialForm(), true, "What it is made of."),
        Required("area", QuantityKind.Area.Above(0, 1), "Cross-section of the metal, all pieces together."),
        Required("length", _length, "Length inside the wall."),
    ]);

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<PartKind> All { get; } =
    [
        Kind("compressor", PortDirection.Through,
            new("type", new ChoiceForm("rotary", "reciprocating"), true, "How it is built."),
            Optional("displacement", QuantityKind.Volume.Above(0, 0.1), "Swept volume per revolution; with speed, unless the flow is given."),
            Optional("speed", QuantityKind.RotationalSpeed.Above(0, 1000), "Shaft speed."),
            Optional("molar-flow", QuantityKind.MolarFlow.Above(0, 1000), "Measured molar flow, instead of displacement and speed."),
            Optional("mass-flow", QuantityKind.MassFlow.Above(0, 100), "Measured mass flow, instead of displacement and speed."),
            Optional("clearance", QuantityKind.Fraction.Between(0, 0.5), "Clearance volume over swept volume."),
            Optional("leakage-per-ratio", QuantityKind.Fraction.Between(0, 0.5), "Share of the volume flow lost per unit of pressure ratio above 1."),
            Optional("suction-heating", _difference, "Warming of the gas between the suction port and the cylinder."),
            new("isentropic-efficiency", new EfficiencyForm(), true, "Isentropic over shaft power: one number, or a group of numbers at pressure ratios."),
            Required("motor-efficiency", _efficiency, "Shaft over electrical power."),
            Optional("shell-heat", QuantityKind.Fraction, "Share of the losses that leaves through the shell instead of heating the gas."),
            Required("maximum-discharge-temperature", QuantityKind.Temperature.Between(280, 600), "Hottest discharge the maker or the oil allows.")),
        Kind("aftercooler", PortDirection.Through,
            Required("approach", _difference, "Outlet temperature above room air."),
            Optional("pressure-drop", _drop, "Pressure drop."),
            Optional("fan-power", _power, "Electrical power of its fan.")),
        Kind("warm-exchanger", PortDirection.Through,
            Required("conductance", _conductance, "Overall heat conductance UA.")) with { Streams = ["high", "low"] },
        Kind("precooler", PortDirection.Through,
            Required("outlet-temperature", QuantityKind.Temperature.Between(150, 330), "Temperature at which the high-pressure stream leaves."),
            Required("evaporator-difference", _difference, "Evaporating temperature below the outlet temperature by this."),
            Required("condenser-difference", _difference, "Condensing temperature above room air by this."),
            Required("carnot-share", (QuantityKind.Fraction with { Name = "a share of Carnot" }).Above(0, 1), "Cooling over electrical input, as a share of Carnot between the two."),
            Optional("capacity", QuantityKind.Power.Above(0, 1e6), "Cooling capacity at that temperature, when known."),
            Optional("fan-power", _power, "Electrical power of its fan.")) with { Streams = ["high", "feed"], DefaultStream = "high" },
        Kind("recuperator", PortDirection.Through,
            Required("conductance", _conductance, "Overall heat conductance UA."),
            new("high-tube", new TubeForm(), false, "Tube that holds the high pressure."),
            new("low-tube", new TubeForm(), false, "Tube that holds the low pressure."),
            Optional("length", _length, "Length."),
            Optional("low-side-pressure-drop", _drop, "Pressure drop of the low-pressure stream.")) with { Streams = ["high", "low", "feed"], IsCold = true },
        Kind("throttle", PortDirection.Through) with { IsCold = true },
        Kind("coil", PortDirection.Through,
            Required("difference", _difference, "What is cooled is warmer than the mixture leaving the coil by this."),
            new("tube", new TubeForm(), false, "Tube."),
            Optional("length", _length, "Tube length.")) with { IsCold = true },
        Kind("vessel", PortDirection.Through,
            new("tube", new TubeForm(), true, "Tube its body is made of."),
            Required("length", QuantityKind.Length.Above(0, 20), "Inside length.")) with { IsCold = true },
        Kind("block", PortDirection.None) with { IsCold = true },
        Kind("cold-box", PortDirection.None,
            new("inside", new BoxForm(), true, "Inside length, width and height."),
            Required("wall", QuantityKind.Length.Above(0, 5), "Thickness of the insulation."),
            new("insulation", new MaterialForm(), true, "Insulation material."),
            new("penetrations", new SectionListForm(Penetration), false, "Wires and supports through the wall; the tubes among the lines are counted by themselves.")),
        Kind("feed", PortDirection.Source,
            new("gas", new ChoiceForm("nitrogen", "argon", "oxygen", "methane"), true, "The gas that is liquefied."),
            Required("pressure", PressureInMachine, "Pressure in the cold vessel."),
            Optional("supply-pressure", PressureInMachine, "Pressure before the feed compressor; left out when a cylinder gives enough pressure."),
            Optional("compressor-efficiency", _efficiency, "Isentropic over electrical power of the feed compressor; needed with supply-pressure.")),
        Kind("valve", PortDirection.Through),
        Kind("relief", PortDirection.End,
            Required("set-pressure", PressureInMachine, "Pressure at which it opens.")),
        Kind("flask", PortDirection.End,
            Required("volume", QuantityKind.Volume.Above(0, 10), "Liquid it holds.")),
    ];

    /// <summary>The words of all kinds.</summary>
    public static IReadOnlyList<string> Words { get; } = All.Select(k => k.Word).ToArray();

    /// <summary>The kind of that word; null when there is none.</summary>
    public static PartKind? Find(string word) => All.FirstOrDefault(k => k.Word == word);

    private static PartKind Kind(string word, PortDirection direction, params ReadOnlySpan<FileKey> keys)
    {
        var all = new List<FileKey> { new("kind", new ChoiceForm(word), true, "What the part is.") };
        all.AddRange(keys);
        if (word is not ("cold-box" or "block" or "flask"))
            all.Add(Optional("maximum-pressure", PressureInMachine, "Allowed pressure stamped on the part or given by its maker."));
        return new PartKind(word, new FileSection(word, all), [], direction);
    }
}
