using Coldwright.Quantities;

namespace Coldwright.Runs.Sensors;

/// <summary>Which element a sensor has.</summary>
public enum SensorElement
{
    /// <summary>Thermocouple type K.</summary>
    ThermocoupleK,
    /// <summary>Thermocouple type T.</summary>
    ThermocoupleT,
    /// <summary>Platinum resistor of 100 ohm.</summary>
    Pt100,
    /// <summary>Platinum resistor of 1000 ohm.</summary>
    Pt1000,
    /// <summary>Any other thermometer that shows a temperature.</summary>
    Thermometer,
    /// <summary>Pressure gauge or transmitter.</summary>
    PressureGauge,
    /// <summary>Barometer: absolute pressure of the room.</summary>
    Barometer,
    /// <summary>Power meter.</summary>
    PowerMeter,
    /// <summary>Energy meter.</summary>
    EnergyMeter,
    /// <summary>Balance.</summary>
    Balance,
    /// <summary>Mass flow meter.</summary>
    FlowMeter,
}

/// <summary>A kind of sensor: its word in the file and what it measures.</summary>
/// <param name="Element">Element.</param>
/// <param name="Word">Word in <c>run.yaml</c>.</param>
/// <param name="Measured">What it measures.</param>
/// <param name="Quantity">Quantity that its readings are converted to, with the limits of what can be true in such a cooler.</param>
public sealed record SensorKind(SensorElement Element, string Word, Measured Measured, QuantityKind Quantity)
{
    // Nothing in a garage cooler is colder than 4 K, hotter than 700 K or above 500 bar: readings beyond are error codes. Our assumption.
    private static readonly QuantityKind _temperature = QuantityKind.Temperature.Between(4, 700);
    private static readonly QuantityKind _pressure = QuantityKind.Pressure.Above(0, 5e7);
    private static readonly QuantityKind _barometer = QuantityKind.AbsolutePressure.Between(4e4, 1.2e5);
    private static readonly QuantityKind _power = QuantityKind.Power.Between(-1e5, 1e6);
    private static readonly QuantityKind _energy = QuantityKind.Energy.Between(-1e12, 1e12);
    private static readonly QuantityKind _mass = QuantityKind.Mass.Between(-1e4, 1e4);
    private static readonly QuantityKind _flow = QuantityKind.MassFlow.Between(-100, 100);

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<SensorKind> All { get; } =
    [
        new(SensorElement.ThermocoupleK, "thermocouple-K", Measured.Temperature, _temperature),
        new(SensorElement.ThermocoupleT, "thermocouple-T", Measured.Temperature, _temperature),
        new(SensorElement.Pt100, "Pt100", Measured.Temperature, _temperature),
        new(SensorElement.Pt1000, "Pt1000", Measured.Temperature, _temperature),
        new(SensorElement.Thermometer, "thermometer", Measured.Temperature, _temperature),
        new(SensorElement.PressureGauge, "pressure-gauge", Measured.Pressure, _pressure),
        new(SensorElement.Barometer, "barometer", Measured.Pressure, _barometer),
        new(SensorElement.PowerMeter, "power-meter", Measured.Power, _power),
        new(SensorElement.EnergyMeter, "energy-meter", Measured.Energy, _energy),
        new(SensorElement.Balance, "balance", Measured.Mass, _mass),
        new(SensorElement.FlowMeter, "flow-meter", Measured.MassFlow, _flow),
    ];

    /// <summary>Its thermocouple; null when it is none.</summary>
    public Thermocouple? Thermocouple => Element switch
    {
        SensorElement.ThermocoupleK => Sensors.Thermocouple.K,
        SensorElement.ThermocoupleT => Sensors.Thermocouple.T,
        _ => null,
    };

    /// <summary>Resistance at 0 °C, ohm; null when it is no platinum resistor.</summary>
    public double? ZeroOhm => Element switch
    {
        SensorElement.Pt100 => 100,
        SensorElement.Pt1000 => 1000,
        _ => null,
    };

    /// <summary>The kind of that word; null when there is none.</summary>
    public static SensorKind? Find(string word) => All.FirstOrDefault(k => k.Word == word);
}
