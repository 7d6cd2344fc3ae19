using Coldwright.Quantities;

namespace Coldwright.Machine.Files.Keys;

/// <summary>Kinds of quantities that several parts of a machine file use, with their limits.</summary>
internal static class QuantityKinds
{
    public static QuantityKind Difference { get; } = QuantityKind.TemperatureDifference.Between(0, 150);
    public static QuantityKind Efficiency { get; } = (QuantityKind.Fraction with { Name = "an efficiency", Example = "0.82" }).Above(0, 1);
    public static QuantityKind Conductance { get; } = QuantityKind.Conductance.Above(0, 1e6);
    public static QuantityKind Length { get; } = (QuantityKind.Length with { Example = "1.2 m" }).Above(0, 1000);
    public static QuantityKind CoilDiameter { get; } = (QuantityKind.Length with { Example = "180 mm" }).Above(0, 10);
    public static QuantityKind Roughness { get; } = (QuantityKind.Length with { Example = "1.5 µm" }).Between(0, 1e-3);
    public static QuantityKind Drop { get; } = QuantityKind.PressureDifference.Between(0, 1e7);
    public static QuantityKind Power { get; } = (QuantityKind.Power with { Example = "28 W" }).Between(0, 1e6);
    public static QuantityKind Displacement { get; } = (QuantityKind.Volume with { Example = "10.8 cm3" }).Above(0, 0.1);
    public static QuantityKind Frequency { get; } = (QuantityKind.Rate with { Name = "a frequency", SiUnit = "Hz", Example = "50 Hz" }).Between(10, 400);
    public static QuantityKind DischargeTemperature { get; } = (QuantityKind.Temperature with { Example = "125 °C" }).Between(280, 600);
    public static QuantityKind EvaporatingTemperature { get; } = (QuantityKind.Temperature with { Example = "7.2 °C" }).Between(150, 320);
    public static QuantityKind CondensingTemperature { get; } = (QuantityKind.Temperature with { Example = "54.4 °C" }).Between(200, 400);
    public static QuantityKind ReturnGasTemperature { get; } = (QuantityKind.Temperature with { Example = "35 °C" }).Between(200, 400);
    public static QuantityKind LiquidTemperature { get; } = (QuantityKind.Temperature with { Example = "46 °C" }).Between(150, 400);
    public static QuantityKind Superheat { get; } = QuantityKind.TemperatureDifference.Between(0, 60);

    /// <summary>W/(m K): conductance per length.</summary>
    public static QuantityKind ConductancePerLength { get; } = new()
    {
        Name = "a heat conductance per length", Dimension = QuantityKind.Conductance.Dimension / QuantityKind.Length.Dimension, SiUnit = "W/(m K)", Example = "0.15 W/(m K)", Minimum = 0, Maximum = 100,
    };

    /// <summary>kg/m3.</summary>
    public static QuantityKind Density { get; } = new()
    {
        Name = "a density", Dimension = QuantityKind.Mass.Dimension / QuantityKind.Volume.Dimension, SiUnit = "kg/m3", Example = "920 kg/m3", Minimum = 1, Maximum = 3000,
    };

    /// <summary>kg/mol.</summary>
    public static QuantityKind MolarMass { get; } = new()
    {
        Name = "a molar mass", Dimension = QuantityKind.Mass.Dimension / (QuantityKind.MolarFlow.Dimension * QuantityKind.Time.Dimension), SiUnit = "kg/mol", Example = "350 g/mol", Minimum = 0.15, Maximum = 2,
    };

    /// <summary>m2/s.</summary>
    public static QuantityKind KinematicViscosity { get; } = new()
    {
        Name = "a kinematic viscosity", Dimension = QuantityKind.Area.Dimension / QuantityKind.Time.Dimension, SiUnit = "m2/s", Example = "20 mm2/s", Minimum = 1e-6, Maximum = 1e-3,
    };
}
