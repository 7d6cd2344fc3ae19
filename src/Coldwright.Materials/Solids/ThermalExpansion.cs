namespace Coldwright.Materials.Solids;

/// <summary>Change of length of a solid on cooling, relative to its length at 293 K.</summary>
/// <remarks>
/// Two published forms. <c>polynomial</c>: (L - L293)/L293 = sum c_n T^n. <c>coefficient</c>: log10(1e6 alpha) = sum c_n (log10 T)^n with
/// alpha in 1/K, integrated here from 293 K; (L - L293)/L293 is the integral of alpha dT.
/// </remarks>
public sealed class ThermalExpansion
{
    /// <summary>Temperature of zero change, K.</summary>
    public const double ReferenceK = 293;

    private readonly Func<double, double> _relative;

    /// <summary>Lower end of the range, K; below it the length is held.</summary>
    public double MinimumK { get; }

    /// <summary>Upper end of the range, K; above it the length is held.</summary>
    public double MaximumK { get; }

    /// <summary>Citation.</summary>
    public string Source { get; }

    private ThermalExpansion(double minimumK, double maximumK, string source, Func<double, double> relative) =>
        (MinimumK, MaximumK, Source, _relative) = (minimumK, maximumK, source, relative);

    /// <summary>From a polynomial of (L - L293)/L293 in T.</summary>
    /// <param name="minimumK">Lower end, K.</param>
    /// <param name="maximumK">Upper end, K.</param>
    /// <param name="source">Citation.</param>
    /// <param name="coefficients">c_0 first, per K^n.</param>
    public static ThermalExpansion Polynomial(double minimumK, double maximumK, string source, IReadOnlyList<double> coefficients)
    {
        var c = coefficients.ToArray();
        return new(minimumK, maximumK, source, t =>
        {
            double sum = 0;
            for (var n = c.Length - 1; n >= 0; n--) sum = sum * t + c[n];
            return sum;
        });
    }

    /// <summary>From the log-polynomial of the coefficient of expansion in 1e-6/K.</summary>
    /// <param name="minimumK">Lower end, K.</param>
    /// <param name="maximumK">Upper end, K.</param>
    /// <param name="source">Citation.</param>
    /// <param name="coefficients">c_0 first.</param>
    public static ThermalExpansion Coefficient(double minimumK, double maximumK, string source, IReadOnlyList<double> coefficients)
    {
        var curve = new LogPolynomialCurve(minimumK, maximumK, coefficients);
        var cumulative = new Lazy<CumulativeProperty>(() => new CumulativeProperty(minimumK, maximumK, curve.At));
        return new(minimumK, maximumK, source, t => 1e-6 * (cumulative.Value.At(t) - cumulative.Value.At(ReferenceK)));
    }

    /// <summary>(L - L293)/L293; negative below 293 K. Outside the range the length at the end is held and a warning given.</summary>
    /// <param name="temperatureK">Temperature, K, above 0.</param>
    public MaterialValue Relative(double temperatureK)
    {
        if (!(double.IsFinite(temperatureK) && temperatureK > 0))
            throw new ArgumentOutOfRangeException(nameof(temperatureK), temperatureK, "the temperature for the expansion must be above 0 K");
        var held = Math.Clamp(temperatureK, MinimumK, MaximumK);
        return new(_relative(held), held == temperatureK ? null : FormattableString.Invariant(
            $"the expansion is known from {MinimumK:0.##} to {MaximumK:0.##} K; at {temperatureK:0.##} K the length at {held:0.##} K was used"));
    }
}
