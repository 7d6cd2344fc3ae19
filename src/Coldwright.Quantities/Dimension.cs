namespace Coldwright.Quantities;

/// <summary>Exponents of the five base dimensions a cooler needs. Fractions, ratios, revolutions and money count as dimensionless.</summary>
/// <param name="Length">Exponent of the metre.</param>
/// <param name="Mass">Exponent of the kilogram.</param>
/// <param name="Time">Exponent of the second.</param>
/// <param name="Temperature">Exponent of the kelvin.</param>
/// <param name="Amount">Exponent of the mole.</param>
public readonly record struct Dimension(int Length, int Mass, int Time, int Temperature, int Amount)
{
    /// <summary>Dimensionless.</summary>
    public static Dimension None => default;

    /// <summary>Dimension of a product.</summary>
    public static Dimension operator *(Dimension a, Dimension b) =>
        new(a.Length + b.Length, a.Mass + b.Mass, a.Time + b.Time, a.Temperature + b.Temperature, a.Amount + b.Amount);

    /// <summary>Dimension of a quotient.</summary>
    public static Dimension operator /(Dimension a, Dimension b) => a * b.Power(-1);

    /// <summary>Dimension raised to a whole power.</summary>
    public Dimension Power(int exponent) =>
        new(Length * exponent, Mass * exponent, Time * exponent, Temperature * exponent, Amount * exponent);
}
