using Coldwright.Fluids.States;

namespace Coldwright.Machine.Recuperation;

/// <summary>Result of a counterflow exchanger per mole of stream.</summary>
/// <param name="Duty">Heat exchanged, J/mol.</param>
/// <param name="LargestDuty">Duty at which the streams would touch, J/mol.</param>
/// <param name="WarmEndDifferenceK">Temperature difference at the warm end, K.</param>
/// <param name="PinchK">Smallest difference, K.</param>
/// <param name="PinchHighK">Temperature of the high-pressure stream at the pinch, K.</param>
/// <param name="PinchLowK">Temperature of the low-pressure stream at the pinch, K.</param>
/// <param name="PinchDutyShare">Place of the pinch, share of the duty from the warm end.</param>
public sealed record CounterflowResult(double Duty, double LargestDuty, double WarmEndDifferenceK, double PinchK, double PinchHighK, double PinchLowK, double PinchDutyShare);

/// <summary>
/// Counterflow exchanger of two equal molar flows with a given overall conductance, discretised over its duty: between
/// any two neighbouring nodes of either stream's enthalpy curve the two temperatures are close to straight in the duty, so
/// each piece needs duty/(logarithmic mean difference). The streams may pinch inside; they never cross.
/// </summary>
public sealed class CounterflowRecuperator
{
    private readonly IsobarCurve _high, _low;
    private readonly double[] _ceilingT, _ceiling;

    /// <param name="high">Isobar of the high-pressure (warm) stream.</param>
    /// <param name="low">Isobar of the low-pressure (cold) stream.</param>
    public CounterflowRecuperator(IsobarCurve high, IsobarCurve low)
    {
        (_high, _low) = (high, low);
        var t = high.TemperaturesK.Concat(low.TemperaturesK).Where(v => v >= Math.Max(high.ColdestK, low.ColdestK) && v <= Math.Min(high.WarmestK, low.WarmestK))
            .Distinct().Order().ToList();
        // the minimum between nodes lies within a fraction of a joule of one of these
        var fine = new List<double>();
        for (int i = 0; i < t.Count - 1; i++) fine.AddRange([t[i], 0.5 * (t[i] + t[i + 1])]);
        fine.Add(t[^1]);
        _ceilingT = fine.ToArray();
        _ceiling = fine.Select(v => low.Enthalpy(v) - high.Enthalpy(v)).ToArray();
    }

    /// <summary>Isothermal enthalpy difference h(T, low) - h(T, high), J/mol: what an endless exchanger leaves as cooling at its narrowest.</summary>
    public double IsothermalDifference(double temperatureK) => _low.Enthalpy(temperatureK) - _high.Enthalpy(temperatureK);

    /// <summary>The least isothermal difference between two temperatures (J/mol) and where it is (K).</summary>
    public (double Least, double AtK) LeastDifference(double coldK, double warmK)
    {
        (double least, double at) = (IsothermalDifference(coldK), coldK);
        double end = IsothermalDifference(warmK);
        if (end < least) (least, at) = (end, warmK);
        for (int i = 0; i < _ceilingT.Length; i++)
            if (_ceilingT[i] > coldK && _ceilingT[i] < warmK && _ceiling[i] < least) (least, at) = (_ceiling[i], _ceilingT[i]);
        return (least, at);
    }

    /// <summary>Solves for the duty.</summary>
    /// <param name="highInletK">High-pressure inlet (warm end), K.</param>
    /// <param name="lowInletK">Low-pressure inlet (cold end), K; below the high-pressure inlet.</param>
    /// <param name="conductancePerFlow">UA over molar flow, J/(mol K); above 0. Infinity: the duty at which the streams touch.</param>
    public CounterflowResult Solve(double highInletK, double lowInletK, double conductancePerFlow)
    {
        double hotIn = _high.Enthalpy(highInletK), coldIn = _low.Enthalpy(lowInletK);
        double largest = hotIn - coldIn + LeastDifference(lowInletK, highInletK).Least;
        // neither stream can pass the other's inlet temperature
        largest = Math.Min(largest, Math.Min(hotIn - _high.Enthalpy(lowInletK), _low.Enthalpy(highInletK) - coldIn));
        if (!(largest > 0)) return Describe(hotIn, coldIn, 0, Math.Max(largest, 0));
        double low = 0, high = largest, duty = double.IsInfinity(conductancePerFlow) ? largest : 0.5 * largest;
        // Newton on 1/UA, which falls smoothly to zero where the streams touch
        for (int i = 0; i < 100 && !double.IsInfinity(conductancePerFlow); i++)
        {
            double f = 1 / Needed(hotIn, coldIn, duty) - 1 / conductancePerFlow;
            if (f > 0) low = duty; else high = duty;
            double shift = 1e-6 * largest, slope = (1 / Needed(hotIn, coldIn, duty - shift) - 1 / conductancePerFlow - f) / -shift;
            double next = duty - f / slope;
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (Math.Abs(next - duty) <= 1e-12 * largest || high - low <= 1e-12 * largest) { duty = next; break; }
            duty = next;
        }
        return Describe(hotIn, coldIn, duty, largest);
    }

    /// <summary>Conductance over flow, J/(mol K), that the exchanger would need for a duty (J/mol); infinite where the streams touch.</summary>
    public double ConductanceFor(double highInletK, double lowInletK, double duty) =>
        Needed(_high.Enthalpy(highInletK), _low.Enthalpy(lowInletK), duty);

    // UA/n for a duty
    private double Needed(double hotIn, double coldIn, double duty)
    {
        double sum = 0, previousX = 0, previousD = Difference(hotIn, coldIn, duty, 0);
        foreach (double x in Nodes(hotIn, coldIn, duty))
        {
            double d = Difference(hotIn, coldIn, duty, x);
            if (!(d > 0) || !(previousD > 0)) return double.PositiveInfinity;
            sum += (x - previousX) / LogMean(previousD, d);
            (previousX, previousD) = (x, d);
        }
        return sum;
    }

    // x: heat from the cold end
    private double Difference(double hotIn, double coldIn, double duty, double x) =>
        _high.Temperature(hotIn - duty + x) - _low.Temperature(coldIn + x);

    private IEnumerable<double> Nodes(double hotIn, double coldIn, double duty)
    {
        var h = _high.Enthalpies;
        var c = _low.Enthalpies;
        double hotOut = hotIn - duty, last = 0;
        int i = FirstAbove(h, hotOut), j = FirstAbove(c, coldIn);
        double floor = 1e-9 * duty;
        while (true)
        {
            double a = i < h.Count ? h[i] - hotOut : double.PositiveInfinity, b = j < c.Count ? c[j] - coldIn : double.PositiveInfinity;
            double x = Math.Min(a, b);
            if (x >= duty - floor) break;
            if (a <= b) i++; else j++;
            if (x > last + floor) yield return last = x;
        }
        if (duty > last) yield return duty;
    }

    private static int FirstAbove(IReadOnlyList<double> list, double value)
    {
        int i = ((double[])list).AsSpan().BinarySearch(value);
        return i < 0 ? ~i : i + 1;
    }

    private static double LogMean(double a, double b)
    {
        double r = a / b;
        return Math.Abs(r - 1) < 1e-3 ? 0.5 * (a + b) - (a - b) * (a - b) / (12 * 0.5 * (a + b)) : (a - b) / Math.Log(r);
    }

    private CounterflowResult Describe(double hotIn, double coldIn, double duty, double largest)
    {
        double least = Difference(hotIn, coldIn, duty, 0), at = 0;
        foreach (double x in Nodes(hotIn, coldIn, duty))
        {
            double d = Difference(hotIn, coldIn, duty, x);
            if (d < least) (least, at) = (d, x);
        }
        return new CounterflowResult(duty, largest, Difference(hotIn, coldIn, duty, duty), Math.Max(least, 0),
            _high.Temperature(hotIn - duty + at), _low.Temperature(coldIn + at), duty > 0 ? 1 - at / duty : 0);
    }

    /// <summary>Temperatures and phases at equal steps of duty, warm end first.</summary>
    public IEnumerable<(double DutyShare, double HighK, double LowK, string HighPhases, string LowPhases)> Stations(double highInletK, double lowInletK, double duty, int count)
    {
        double hotIn = _high.Enthalpy(highInletK), coldIn = _low.Enthalpy(lowInletK);
        for (int i = 0; i <= count; i++)
        {
            double share = (double)i / count, hot = hotIn - share * duty, cold = coldIn + (1 - share) * duty;
            yield return (share, _high.Temperature(hot), _low.Temperature(cold), _high.PhasesAt(hot), _low.PhasesAt(cold));
        }
    }
}
