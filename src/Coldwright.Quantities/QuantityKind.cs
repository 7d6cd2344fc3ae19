namespace Coldwright.Quantities;

/// <summary>What a quantity is: its name, dimension, scale and limits. Limits are in SI units.</summary>
public sealed record QuantityKind
{
    /// <summary>Name with its article, as used in a message: <c>a length</c>.</summary>
    public required string Name { get; init; }
    /// <summary>Exponents of the base dimensions.</summary>
    public required Dimension Dimension { get; init; }
    /// <summary>The SI unit of the result.</summary>
    public required string SiUnit { get; init; }
    /// <summary>A text that would be accepted.</summary>
    public required string Example { get; init; }
    /// <summary>How zero is to be understood.</summary>
    public QuantityScale Scale { get; init; }
    /// <summary>Lowest value, SI; null when there is none.</summary>
    public double? Minimum { get; init; }
    /// <summary>True when the minimum itself is refused.</summary>
    public bool AboveMinimum { get; init; }
    /// <summary>Highest value, SI; null when there is none.</summary>
    public double? Maximum { get; init; }

    /// <summary>The same kind with values from <paramref name="minimum"/> to <paramref name="maximum"/>, SI.</summary>
    public QuantityKind Between(double minimum, double maximum) => this with { Minimum = minimum, AboveMinimum = false, Maximum = maximum };

    /// <summary>The same kind with values above <paramref name="minimum"/>, up to <paramref name="maximum"/>, SI.</summary>
    public QuantityKind Above(double minimum, double maximum) => this with { Minimum = minimum, AboveMinimum = true, Maximum = maximum };

    /// <summary>Pressure with gauge or absolute written out; result Pa absolute.</summary>
    public static QuantityKind Pressure { get; } = Kind("a pressure", -1, 1, -2, 0, 0, "Pa", "17 barg", QuantityScale.Pressure).Above(0, 1e10);
    /// <summary>Absolute pressure; gauge is refused; result Pa absolute.</summary>
    public static QuantityKind AbsolutePressure { get; } = Pressure with { Name = "an absolute pressure", Example = "1013 mbara", Scale = QuantityScale.AbsolutePressure };
    /// <summary>Pressure difference, Pa.</summary>
    public static QuantityKind PressureDifference { get; } = Kind("a pressure difference", -1, 1, -2, 0, 0, "Pa", "0.2 bar", QuantityScale.PressureDifference);
    /// <summary>Temperature on a scale; result K, above absolute zero.</summary>
    public static QuantityKind Temperature { get; } = Kind("a temperature", 0, 0, 0, 1, 0, "K", "-19 °C", QuantityScale.TemperaturePoint).Above(0, 1e5);
    /// <summary>Temperature difference, K.</summary>
    public static QuantityKind TemperatureDifference { get; } = Kind("a temperature difference", 0, 0, 0, 1, 0, "K", "5 K", QuantityScale.TemperatureDifference);
    /// <summary>Length, m.</summary>
    public static QuantityKind Length { get; } = Kind("a length", 1, 0, 0, 0, 0, "m", "1.2 m");
    /// <summary>Area, m2.</summary>
    public static QuantityKind Area { get; } = Kind("an area", 2, 0, 0, 0, 0, "m2", "60 m2");
    /// <summary>Volume, m3.</summary>
    public static QuantityKind Volume { get; } = Kind("a volume", 3, 0, 0, 0, 0, "m3", "2 L");
    /// <summary>Mass, kg.</summary>
    public static QuantityKind Mass { get; } = Kind("a mass", 0, 1, 0, 0, 0, "kg", "250 g");
    /// <summary>Time, s.</summary>
    public static QuantityKind Time { get; } = Kind("a time", 0, 0, 1, 0, 0, "s", "4 h");
    /// <summary>Events per time, 1/s.</summary>
    public static QuantityKind Rate { get; } = Kind("a rate", 0, 0, -1, 0, 0, "1/s", "2 1/h");
    /// <summary>Shaft speed, revolutions per second.</summary>
    public static QuantityKind RotationalSpeed { get; } = Kind("a shaft speed", 0, 0, -1, 0, 0, "rev/s", "2850 rpm");
    /// <summary>Power or heat flow, W.</summary>
    public static QuantityKind Power { get; } = Kind("a power", 2, 1, -3, 0, 0, "W", "2.6 kW");
    /// <summary>Energy, J.</summary>
    public static QuantityKind Energy { get; } = Kind("an energy", 2, 1, -2, 0, 0, "J", "3 kWh");
    /// <summary>Heat conductance, W/K.</summary>
    public static QuantityKind Conductance { get; } = Kind("a heat conductance", 2, 1, -3, -1, 0, "W/K", "12 W/K");
    /// <summary>Mass flow, kg/s.</summary>
    public static QuantityKind MassFlow { get; } = Kind("a mass flow", 0, 1, -1, 0, 0, "kg/s", "1.35 mg/s");
    /// <summary>Molar flow, mol/s.</summary>
    public static QuantityKind MolarFlow { get; } = Kind("a molar flow", 0, 0, -1, 0, 1, "mol/s", "0.05 mol/s");
    /// <summary>Volume flow, m3/s.</summary>
    public static QuantityKind VolumeFlow { get; } = Kind("a volume flow", 3, 0, -1, 0, 0, "m3/s", "30 L/min");
    /// <summary>Molar enthalpy, J/mol.</summary>
    public static QuantityKind MolarEnthalpy { get; } = Kind("a molar enthalpy", 2, 1, -2, 0, -1, "J/mol", "-1200 J/mol");
    /// <summary>Molar entropy, J/(mol K).</summary>
    public static QuantityKind MolarEntropy { get; } = Kind("a molar entropy", 2, 1, -2, -1, -1, "J/(mol K)", "-35 J/(mol K)");
    /// <summary>A share from 0 to 1; a plain number, % or ppm.</summary>
    public static QuantityKind Fraction { get; } = Kind("a fraction", 0, 0, 0, 0, 0, "1", "2 %").Between(0, 1);
    /// <summary>A number without unit.</summary>
    public static QuantityKind Number { get; } = Kind("a number", 0, 0, 0, 0, 0, "1", "7.5");
    /// <summary>Money per energy, per J, in the shop's own currency.</summary>
    public static QuantityKind PricePerEnergy { get; } = Kind("a price of energy", -2, -1, 2, 0, 0, "1/J", "0.31 per kWh").Between(0, 1e6);
    /// <summary>Money per mass, per kg, in the shop's own currency.</summary>
    public static QuantityKind PricePerMass { get; } = Kind("a price by mass", 0, -1, 0, 0, 0, "1/kg", "4.20 per kg").Between(0, 1e12);
    /// <summary>Money per length, per m, in the shop's own currency.</summary>
    public static QuantityKind PricePerLength { get; } = Kind("a price by length", -1, 0, 0, 0, 0, "1/m", "4.10 per m").Between(0, 1e12);
    /// <summary>Money per volume, per m3, in the shop's own currency.</summary>
    public static QuantityKind PricePerVolume { get; } = Kind("a price by volume", -3, 0, 0, 0, 0, "1/m3", "2.40 per L").Between(0, 1e12);

    private static QuantityKind Kind(string name, int length, int mass, int time, int temperature, int amount, string si, string example, QuantityScale scale = QuantityScale.Amount) =>
        new() { Name = name, Dimension = new(length, mass, time, temperature, amount), SiUnit = si, Example = example, Scale = scale };
}
