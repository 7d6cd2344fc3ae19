using Coldwright.Quantities;
using static Coldwright.Machine.Files.Keys.MachineKeys;

namespace Coldwright.Machine.Files.Keys;

/// <summary>The keys of the product's way: feed, valves, flask.</summary>
public static class FeedKeys
{
    /// <summary>The cylinder or tank.</summary>
    public static FileSection Receiver { get; } = new("receiver",
    [
        Required("volume", (QuantityKind.Volume with { Example = "40 L" }).Between(1e-4, 10), "Volume of the cylinder or tank."),
        Required("pressure", PressureInMachine with { Example = "8 barg" }, "Pressure in it at the start."),
        Optional("lowest-pressure", PressureInMachine with { Example = "2 barg" }, "Pressure in it at which feeding ends; that of the room when left out."),
    ]);

    /// <summary>The feed compressor.</summary>
    public static FileSection Compressor { get; } = new("feed compressor",
    [
        new("type", new ChoiceForm("rotary", "reciprocating"), true, "How it is built."),
        Required("displacement", (QuantityKind.Volume with { Example = "7 cm3" }).Between(1e-7, 1e-2), "Swept volume per revolution."),
        Required("speed", QuantityKind.RotationalSpeed.Between(1, 300), "Shaft speed."),
        Optional("clearance", QuantityKind.Fraction.Between(0, 0.3), "Clearance volume over swept volume; the usual one of its kind when left out."),
        new("shell-cooling", new ChoiceForm("still-air", "fan", "water-bath"), false, "What cools its shell; still air when left out."),
        Optional("shell-conductance", QuantityKind.Conductance.Between(0, 1000), "Measured heat conductance from the shell to the room or the bath, instead of an estimate."),
        Optional("mass", (QuantityKind.Mass with { Example = "9 kg" }).Between(0.05, 1000), "Mass of shell, motor and pump; it decides how long it may run."),
        Optional("maximum-discharge-temperature", QuantityKinds.DischargeTemperature, "Hottest discharge the maker or the oil allows."),
        Optional("maximum-shell-temperature", (QuantityKind.Temperature with { Example = "90 °C" }).Between(280, 500), "Hottest shell allowed; the motor's protector opens above it."),
        new("lubrication", new ChoiceForm("pump", "splash", "dry-sump"), false, "How oil reaches its bearings."),
        Optional("lowest-speed", (QuantityKind.RotationalSpeed with { Example = "1400 rpm" }).Between(0.1, 300), "Lowest speed at which its oil pump or splasher still works."),
        Optional("oil-charge", QuantityKind.Mass.Between(0.005, 20), "Oil in it."),
    ]);

    /// <summary>Keys of the feed.</summary>
    internal static IReadOnlyList<FileKey> Feed { get; } =
    [
        new("gas", new ChoiceForm("nitrogen", "argon", "oxygen", "methane"), true, "The gas that is liquefied."),
        Required("pressure", PressureInMachine, "Pressure in the cold vessel."),
        Optional("supply-pressure", PressureInMachine with { Example = "0 barg" }, "Pressure before the feed compressor; left out when a cylinder gives enough pressure."),
        Optional("compressor-efficiency", QuantityKinds.Efficiency, "Isentropic over electrical power of the feed compressor; needed with supply-pressure."),
        new("receiver", new SectionForm(Receiver), false, "Cylinder or tank whose pressure falls as gas is taken; a supply that never falls when left out."),
        new("compressor", new SectionForm(Compressor), false, "The feed compressor's sizes, for batch: what it delivers, how hot it gets, how long it may run."),
    ];

    /// <summary>Keys of a valve.</summary>
    internal static IReadOnlyList<FileKey> Valve { get; } =
    [
        Optional("kv", (QuantityKind.Number with { Name = "a flow coefficient", Example = "0.004" }).Above(0, 100), "Flow coefficient as far as it is opened, m3/h of water at 1 bar; decides how fast the vessel fills or drains."),
        Optional("seat-leak", (QuantityKind.MassFlow with { Example = "1 mg/s" }).Between(0, 0.1), "What it lets past when shut, by mass at the vessel's pressure; tight when left out."),
        Optional("body-mass", (QuantityKind.Mass with { Example = "120 g" }).Between(0, 50), "Metal of its body that the liquid has to cool; none when left out."),
    ];

    /// <summary>Keys of the flask.</summary>
    internal static IReadOnlyList<FileKey> Flask { get; } =
    [
        Required("volume", QuantityKind.Volume.Above(0, 10), "Liquid it holds."),
        Optional("boil-off", (QuantityKind.VolumeFlow with { Example = "0.2 L/d" }).Between(0, 1e-4), "Liquid nitrogen it loses when it stands, by volume and time."),
        Optional("wall-mass", (QuantityKind.Mass with { Example = "250 g" }).Between(0, 100), "Inner wall that the liquid has to cool."),
        new("wall-material", new MaterialForm(), false, "What the inner wall is made of."),
    ];
}
