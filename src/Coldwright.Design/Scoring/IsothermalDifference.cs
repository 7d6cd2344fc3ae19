using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;

namespace Coldwright.Design.Scoring;

/// <summary>
/// Smallest isothermal enthalpy difference h(T, low) - h(T, high) between a cold and a warm temperature: what an endless exchanger leaves of the throttle's
/// cooling, per mole that circulates. J/mol. The criterion of Keppler, Nellis and Klein, HVAC&amp;R Research 10 (2004) 213. Not thread-safe.
/// </summary>
public sealed class IsothermalDifference
{
    private readonly Flash _high, _low;
    private readonly double _highPa, _lowPa;
    private readonly double[] _temperatures, _differences;
    private readonly int _refinements;

    /// <param name="model">Fluid model.</param>
    /// <param name="highPa">High pressure, Pa absolute.</param>
    /// <param name="lowPa">Low pressure, Pa absolute, below the high one.</param>
    /// <param name="coldK">Cold end, K.</param>
    /// <param name="warmK">Warm end, K, above the cold one.</param>
    /// <param name="points">Temperatures looked at, 3..500; around the smallest two more, again and again.</param>
    /// <param name="refinements">How often, 0..20.</param>
    public IsothermalDifference(HelmholtzModel model, double highPa, double lowPa, double coldK, double warmK, int points = 33, int refinements = 4)
    {
        if (!(lowPa > 0 && highPa > lowPa)) throw new ArgumentException(FormattableString.Invariant($"the high pressure is {highPa} Pa; it must be above the low one, {lowPa} Pa, and that above 0 Pa"), nameof(highPa));
        if (!(coldK > 0 && warmK > coldK)) throw new ArgumentException(FormattableString.Invariant($"the warm end is {warmK} K; it must be above the cold one, {coldK} K, and that above 0 K"), nameof(warmK));
        if (points is < 3 or > 500) throw new ArgumentException($"points: {points}; 3 to 500 are expected", nameof(points));
        (_high, _low, _highPa, _lowPa, _refinements) = (new Flash(model), new Flash(model), highPa, lowPa, refinements);
        _temperatures = [.. Enumerable.Range(0, points).Select(i => warmK - (warmK - coldK) * i / (points - 1))];
        _differences = new double[points];
    }

    /// <summary>Temperatures of the last answer, K, warm end first.</summary>
    public IReadOnlyList<double> TemperaturesK => _temperatures;
    /// <summary>Differences there, J/mol.</summary>
    public IReadOnlyList<double> Differences => _differences;
    /// <summary>Where the last smallest difference was, K.</summary>
    public double WhereK { get; private set; }

    /// <summary>The smallest difference, J/mol; negative infinity where a state has no answer.</summary>
    /// <param name="z">Mole fractions.</param>
    /// <param name="enough">A difference below which the answer no longer matters: the march stops there.</param>
    public double Smallest(ReadOnlySpan<double> z, double enough = double.NegativeInfinity)
    {
        double least = double.PositiveInfinity;
        int at = 0;
        for (int i = 0; i < _temperatures.Length; i++)
        {
            double d = _differences[i] = At(_temperatures[i], z, i > 0);
            if (d < least) (least, at) = (d, i);
            if (least < enough) return least;
        }
        WhereK = _temperatures[at];
        double step = 0.5 * (_temperatures[0] - _temperatures[1]);
        for (int k = 0; k < _refinements; k++, step *= 0.5)
            foreach (double t in (double[])[WhereK + step, WhereK - step])
                if (t <= _temperatures[0] && t >= _temperatures[^1] && At(t, z, false) is var d && d < least) (least, WhereK) = (d, t);
        return least;
    }

    private double At(double temperatureK, ReadOnlySpan<double> z, bool warm) =>
        _low.TrySolve(temperatureK, _lowPa, z, warm) && _high.TrySolve(temperatureK, _highPa, z, warm) ? _low.Enthalpy() - _high.Enthalpy() : double.NegativeInfinity;
}
