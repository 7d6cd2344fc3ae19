using Coldwright.Quantities;
using static Coldwright.Machine.Files.Keys.MachineKeys;

namespace Coldwright.Machine.Files.Keys;

/// <summary>The keys of a precooler.</summary>
public static class PrecoolerKeys
{
    /// <summary>The precooler's own loop.</summary>
    public static FileSection Loop { get; } = new("precooler loop",
    [
        new("refrigerant", new RefrigerantForm(), true, "Its refrigerant: a substance or a blend."),
        new("type", new ChoiceForm("rotary", "reciprocating"), true, "How its compressor is built."),
        Optional("displacement", QuantityKinds.Displacement.Between(1e-7, 1e-2), "Swept volume of its compressor per revolution; or give a nameplate or a rating sheet."),
        Optional("speed", QuantityKind.RotationalSpeed.Between(5, 300), "Shaft speed; when left out, that of its motor from supply frequency and poles."),
        .. CompressorKeys.MotorAndShell,
        Optional("maximum-discharge-temperature", QuantityKinds.DischargeTemperature, "Hottest discharge the maker or the oil allows."),
        Optional("cut-out", (QuantityKind.Temperature with { Example = "-50 °C" }).Between(60, 300), "Evaporating temperature at which its thermostat or pressure switch stops it."),
        Required("condenser-conductance", QuantityKinds.Conductance, "Heat conductance UA from the refrigerant to the room air."),
        Optional("condenser-air-flow", (QuantityKind.VolumeFlow with { Example = "600 m3/h" }).Above(0, 100), "Room air that the fan moves through the condenser."),
        Required("evaporator-conductance", QuantityKinds.Conductance, "Heat conductance UA from the mixture to the refrigerant."),
        Optional("superheat", QuantityKinds.Superheat.Between(0, 30), "Superheat that a thermostatic valve holds at the evaporator's outlet."),
        Optional("subcooling", QuantityKinds.Superheat.Between(0, 40), "Subcooling of the liquid behind the condenser."),
        new("capillary", new SectionForm(ThrottleKeys.Capillary), false, "Capillary that lets the refrigerant down, instead of a thermostatic valve."),
        new("valve", new SectionForm(ThrottleKeys.Valve), false, "Valve of fixed opening that lets the refrigerant down, instead of a thermostatic valve."),
    ])
    {
        Needs =
        [
            new(["displacement"], ["nameplate"], ["rating-sheet"]),
            new(["superheat"], ["capillary"], ["valve"]),
        ],
    };

    /// <summary>Keys of the precooler.</summary>
    internal static IReadOnlyList<FileKey> Keys { get; } =
    [
        Required("outlet-temperature", (QuantityKind.Temperature with { Example = "-35 °C" }).Between(150, 330), "Temperature at which the high-pressure stream leaves."),
        Required("evaporator-difference", QuantityKinds.Difference, "Evaporating temperature below the outlet temperature by this."),
        Required("condenser-difference", QuantityKinds.Difference, "Condensing temperature above room air by this."),
        Required("carnot-share", (QuantityKind.Fraction with { Name = "a share of Carnot", Example = "0.36" }).Above(0, 1), "Cooling over electrical input, as a share of Carnot between the two."),
        Optional("capacity", (QuantityKind.Power with { Example = "520 W" }).Above(0, 1e6), "Cooling capacity at that temperature, when known."),
        Optional("fan-power", QuantityKinds.Power, "Electrical power of its fan."),
        PartKinds.GasVolume("0.1 L", "Volume of the mixture's passage; part of what the charge fills."),
        new("loop", new SectionForm(Loop), false, "The loop itself, from which its temperatures are worked out."),
    ];
}
