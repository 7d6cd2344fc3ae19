using Coldwright.Quantities;
using static Coldwright.Machine.Files.Keys.MachineKeys;

namespace Coldwright.Machine.Files.Keys;

/// <summary>The keys that describe a compressor beyond displacement and measured figures.</summary>
public static class CompressorKeys
{
    /// <summary>What a plate says.</summary>
    public static FileSection Nameplate { get; } = new("nameplate",
    [
        new("rating", new ChoiceForm("appliance", "compressor"), true, "Whose cooling capacity it is: that of a whole appliance in its test room, or that of the compressor alone."),
        Required("capacity", QuantityKind.Power.Between(10, 1e6), "Rated cooling capacity."),
        Optional("power", (QuantityKind.Power with { Example = "780 W" }).Between(5, 1e6), "Rated electrical power of the compressor, fans not counted."),
        new("refrigerant", new RefrigerantForm(), true, "Refrigerant it was rated on: a substance or a blend."),
        Optional("evaporating", QuantityKinds.EvaporatingTemperature, "Evaporating temperature of the rating, at the dew point."),
        Optional("condensing", QuantityKinds.CondensingTemperature, "Condensing temperature of the rating, at the dew point."),
        Optional("return-gas", QuantityKinds.ReturnGasTemperature, "Gas at the suction port during a compressor's own rating."),
        Optional("liquid", QuantityKinds.LiquidTemperature, "Liquid before the expansion device during a compressor's own rating."),
    ]);

    /// <summary>A sheet's polynomials.</summary>
    public static FileSection RatingSheet { get; } = new("rating sheet",
    [
        new("refrigerant", new RefrigerantForm(), true, "Refrigerant of the sheet: a substance or a blend."),
        new("units", new ChoiceForm("si", "ip"), false, "si: dew points in °C and flow in kg/h, as when left out; ip: °F and lb/h. Power in W both times."),
        new("mass-flow", new NumberListForm(10), true, "The ten coefficients of the mass flow, in the order of the sheet."),
        new("power", new NumberListForm(10), true, "The ten coefficients of the electrical power."),
        Required("lowest-evaporating", QuantityKinds.EvaporatingTemperature with { Example = "-10 °C" }, "Lowest evaporating temperature of the sheet; below it the polynomials mean nothing."),
        Required("highest-evaporating", QuantityKinds.EvaporatingTemperature with { Example = "12 °C" }, "Highest evaporating temperature of the sheet."),
        Required("lowest-condensing", QuantityKinds.CondensingTemperature with { Example = "30 °C" }, "Lowest condensing temperature of the sheet."),
        Required("highest-condensing", QuantityKinds.CondensingTemperature with { Example = "60 °C" }, "Highest condensing temperature of the sheet."),
        Optional("return-gas", QuantityKinds.ReturnGasTemperature, "Return gas temperature that the sheet holds; or give the superheat."),
        Optional("superheat", QuantityKinds.Superheat with { Example = "11 K" }, "Superheat that the sheet holds; or give the return gas temperature."),
    ]);

    /// <summary>Separator and return line.</summary>
    public static FileSection Oil { get; } = new("oil",
    [
        Optional("circulation", QuantityKind.Fraction.Between(0.0005, 0.1), "Oil that leaves with the gas, of the gas by mass; the usual value of its kind when left out."),
        Optional("separator-efficiency", (QuantityKind.Fraction with { Example = "95 %" }).Between(0, 0.9999), "Share of that oil which the separator catches."),
        Required("sump-volume", (QuantityKind.Volume with { Example = "150 mL" }).Between(1e-7, 0.01), "Oil that the separator holds between empty and full."),
        Optional("used-share", (QuantityKind.Fraction with { Example = "50 %" }).Between(0.05, 0.95), "Share of the sump let fill before the return valve opens."),
        Required("return-bore", (QuantityKind.Length with { Example = "1.5 mm" }).Between(2e-4, 0.02), "Bore of the oil's return line."),
        Required("return-length", (QuantityKind.Length with { Example = "0.6 m" }).Between(0.01, 20), "Length of the oil's return line."),
        Optional("density", QuantityKinds.Density.Between(700, 1200), "Density of the oil."),
        Optional("viscosity", QuantityKinds.KinematicViscosity, "Viscosity of the oil where it flows back, dissolved gas included."),
        Optional("charge", QuantityKind.Mass.Between(0.02, 20), "Oil in the compressor when filled."),
        Optional("molar-mass", QuantityKinds.MolarMass, "Molar mass of the oil; when given, gas dissolved in it counts as part of the charge."),
        Optional("cold-trap-efficiency", (QuantityKind.Fraction with { Example = "90 %" }).Between(0, 1), "Share of the passing oil that a filter ahead of the cold end takes."),
    ]);

    /// <summary>Keys of motor and shell, the same for the loop's and the precooler's compressor.</summary>
    internal static IReadOnlyList<FileKey> MotorAndShell { get; } =
    [
        Optional("supply-frequency", QuantityKinds.Frequency, "Frequency of its supply."),
        new("poles", new WholeNumberForm(2, 12, 2), false, "Poles of its motor; two turn at nearly the supply's frequency."),
        new("shell-cooling", new ChoiceForm("still-air", "fan"), false, "What cools its shell."),
        Optional("shell-conductance", QuantityKind.Conductance.Between(0, 1000), "Measured heat conductance from the shell to the room, instead of an estimate."),
        new("nameplate", new SectionForm(Nameplate), false, "Its rating, from which displacement and losses are worked out."),
        new("rating-sheet", new SectionForm(RatingSheet), false, "Its maker's ten-coefficient polynomials."),
    ];

    /// <summary>Keys of the loop's compressor.</summary>
    internal static IReadOnlyList<FileKey> Keys { get; } =
    [
        new("type", new ChoiceForm("rotary", "reciprocating"), true, "How it is built."),
        Optional("displacement", QuantityKinds.Displacement, "Swept volume per revolution; with speed, unless the flow is given."),
        Optional("speed", QuantityKind.RotationalSpeed.Above(0, 1000), "Shaft speed."),
        Optional("molar-flow", QuantityKind.MolarFlow.Above(0, 1000), "Measured molar flow, instead of displacement and speed."),
        Optional("mass-flow", (QuantityKind.MassFlow with { Example = "2.3 g/s" }).Above(0, 100), "Measured mass flow, instead of displacement and speed."),
        Optional("clearance", QuantityKind.Fraction.Between(0, 0.5), "Clearance volume over swept volume."),
        Optional("leakage-per-ratio", QuantityKind.Fraction.Between(0, 0.5), "Share of the volume flow lost per unit of pressure ratio above 1."),
        Optional("suction-heating", QuantityKinds.Difference, "Warming of the gas between the suction port and the cylinder."),
        new("isentropic-efficiency", new EfficiencyForm(), false, "Isentropic over shaft power: one number, or a group of numbers at pressure ratios."),
        Optional("motor-efficiency", QuantityKinds.Efficiency, "Shaft over electrical power."),
        Optional("shell-heat", QuantityKind.Fraction with { Example = "85 %" }, "Share of the losses that leaves through the shell instead of heating the gas."),
        Required("maximum-discharge-temperature", QuantityKinds.DischargeTemperature, "Hottest discharge the maker or the oil allows."),
        .. MotorAndShell,
        PartKinds.GasVolume("0.9 L", "Gas space in its shell; part of what the charge fills."),
        new("oil", new SectionForm(Oil), false, "Oil separator and return."),
    ];

    /// <summary>How flow and losses of the loop's compressor may be described.</summary>
    internal static IReadOnlyList<KeyNeed> Needs { get; } =
    [
        new(["displacement", "speed"], ["molar-flow"], ["mass-flow"], ["nameplate"], ["rating-sheet"]),
        new(["isentropic-efficiency", "motor-efficiency"], ["nameplate"], ["rating-sheet"]),
    ];
}
