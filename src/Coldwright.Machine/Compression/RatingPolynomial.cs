namespace Coldwright.Machine.Compression;

/// <summary>Scale of the dew points that go into a rating polynomial.</summary>
public enum DewPointScale
{
    /// <summary>Degrees Celsius (SI sheets).</summary>
    Celsius,
    /// <summary>Degrees Fahrenheit (IP sheets).</summary>
    Fahrenheit,
}

/// <summary>
/// The ten-coefficient rating polynomial of compressor sheets,
/// X = C1 + C2 S + C3 D + C4 S^2 + C5 S D + C6 D^2 + C7 S^3 + C8 D S^2 + C9 S D^2 + C10 D^3, with S the dew point at the
/// suction and D that at the discharge pressure. Form of AHRI Standard 540 (the order of the coefficients from memory).
/// </summary>
public sealed class RatingPolynomial
{
    private readonly double[] _c;

    /// <param name="coefficients">C1 to C10, in the sheet's own units.</param>
    /// <param name="scale">Scale of the dew points.</param>
    /// <param name="toSi">What the polynomial's value is multiplied by to give SI: 1 for W, 1/3600 for kg/h, see <see cref="KilogramsPerPound"/>.</param>
    public RatingPolynomial(IReadOnlyList<double> coefficients, DewPointScale scale, double toSi = 1)
    {
        if (coefficients.Count != 10) throw new ArgumentException($"a rating polynomial has 10 coefficients, got {coefficients.Count}", nameof(coefficients));
        for (int i = 0; i < 10; i++)
            if (!double.IsFinite(coefficients[i])) throw new ArgumentException($"coefficient C{i + 1} is {coefficients[i]}; it must be a number", nameof(coefficients));
        InputCheck.Within(toSi, 1e-12, 1e12, "", nameof(toSi));
        (_c, Scale, ToSi) = ([.. coefficients], scale, toSi);
    }

    /// <summary>kg in an avoirdupois pound (exact, 1959 agreement).</summary>
    public const double KilogramsPerPound = 0.45359237;

    /// <summary>C1 to C10.</summary>
    public IReadOnlyList<double> Coefficients => _c;
    /// <summary>Scale of the dew points.</summary>
    public DewPointScale Scale { get; }
    /// <summary>Factor to SI.</summary>
    public double ToSi { get; }

    /// <summary>Mass flow given in kg/h on Celsius dew points; evaluates to kg/s.</summary>
    /// <param name="coefficients">C1 to C10.</param>
    public static RatingPolynomial FlowInKilogramsPerHour(IReadOnlyList<double> coefficients) => new(coefficients, DewPointScale.Celsius, 1.0 / 3600);
    /// <summary>Mass flow given in lb/h on Fahrenheit dew points; evaluates to kg/s.</summary>
    /// <param name="coefficients">C1 to C10.</param>
    public static RatingPolynomial FlowInPoundsPerHour(IReadOnlyList<double> coefficients) => new(coefficients, DewPointScale.Fahrenheit, KilogramsPerPound / 3600);

    /// <summary>Value in SI.</summary>
    /// <param name="evaporatingK">Dew point at the suction pressure, K.</param>
    /// <param name="condensingK">Dew point at the discharge pressure, K.</param>
    public double At(double evaporatingK, double condensingK)
    {
        double s = Degrees(evaporatingK), d = Degrees(condensingK);
        return ToSi * (_c[0] + _c[1] * s + _c[2] * d + _c[3] * s * s + _c[4] * s * d + _c[5] * d * d
            + _c[6] * s * s * s + _c[7] * d * s * s + _c[8] * s * d * d + _c[9] * d * d * d);
    }

    private double Degrees(double kelvin) => Scale == DewPointScale.Celsius ? kelvin - 273.15 : (kelvin - 273.15) * 1.8 + 32;
}
