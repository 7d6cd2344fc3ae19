namespace Coldwright.Fluids.Freezing;

/// <summary>
/// Sublimation pressure of a pure substance: ln(p/p_t) = (T_t/T) sum a_k u^b_k with u = T/T_t or 1 - T/T_t, and below
/// <see cref="JoinTemperatureK"/>, where there is a second published equation, ln(p/Pa) = c + sum a_k/T^k with c such that
/// both agree there. Sources: data/freezing.
/// </summary>
public sealed class SublimationCurve
{
    private readonly double[] _a, _b, _cold;
    private readonly bool _oneMinusTheta;
    private readonly double _shift;

    internal SublimationCurve(double tripleTemperatureK, double triplePressurePa, bool oneMinusTheta, double[] a, double[] b,
        double minimumTemperatureK, double[] cold, double joinTemperatureK, double solidMolarVolume)
    {
        (TripleTemperatureK, TriplePressurePa, _oneMinusTheta, _a, _b) = (tripleTemperatureK, triplePressurePa, oneMinusTheta, a, b);
        (MinimumTemperatureK, _cold, SolidMolarVolume) = (minimumTemperatureK, cold, solidMolarVolume);
        if (cold.Length == 0) return;
        JoinTemperatureK = joinTemperatureK;
        _shift = Warm(joinTemperatureK) - Cold(joinTemperatureK);
    }

    /// <summary>Triple-point temperature of the equation, K: its upper end.</summary>
    public double TripleTemperatureK { get; }

    /// <summary>Triple-point pressure of the equation, Pa.</summary>
    public double TriplePressurePa { get; }

    /// <summary>Lowest temperature of the published equations, K; below it they are extrapolated.</summary>
    public double MinimumTemperatureK { get; }

    /// <summary>Below this the second equation is used, K; 0 where there is none.</summary>
    public double JoinTemperatureK { get; }

    /// <summary>Molar volume of the solid for the pressure correction, m3/mol; taken as constant.</summary>
    public double SolidMolarVolume { get; }

    /// <summary>ln of the sublimation pressure in Pa at a temperature in K, up to the triple point.</summary>
    public double LnPressure(double temperatureK)
    {
        if (!(temperatureK > 0 && temperatureK <= TripleTemperatureK))
            throw new ArgumentOutOfRangeException(nameof(temperatureK), $"a solid sublimes between 0 and its triple point at {TripleTemperatureK} K, got {temperatureK} K");
        return temperatureK < JoinTemperatureK ? Cold(temperatureK) + _shift : Warm(temperatureK);
    }

    private double Warm(double t)
    {
        double theta = t / TripleTemperatureK, u = _oneMinusTheta ? 1 - theta : theta, sum = 0;
        for (int k = 0; k < _a.Length; k++) sum += _a[k] * Math.Pow(u, _b[k]);
        return Math.Log(TriplePressurePa) + sum / theta;
    }

    private double Cold(double t)
    {
        double sum = 0;
        for (int k = _cold.Length - 1; k >= 0; k--) sum = sum / t + _cold[k];
        return sum;
    }
}
