using static Coldwright.Runs.Sensors.ThermocoupleCoefficients;

namespace Coldwright.Runs.Sensors;

/// <summary>
/// Voltage of a thermocouple and back, by the reference functions of NIST Monograph 175 (ITS-90).
/// The inverse is solved on the reference function itself, so that there and back agree to 1e-9 K; NIST's inverse polynomial is only its start.
/// </summary>
public sealed class Thermocouple
{
    private const double ZeroK = 273.15;
    private readonly double[] _cold, _warm, _start;
    private readonly double _highestC;

    private Thermocouple(ThermocoupleType type)
    {
        Type = type;
        (_cold, _warm, _start, _highestC) = type == ThermocoupleType.K ? (ColdK, WarmK, InverseK, 1372.0) : (ColdT, WarmT, InverseT, 400.0);
        LowestVoltageV = VoltageV(LowestK);
        HighestVoltageV = VoltageV(HighestK);
    }

    /// <summary>Type K: -270 to 1372 °C.</summary>
    public static Thermocouple K { get; } = new(ThermocoupleType.K);

    /// <summary>Type T: -270 to 400 °C.</summary>
    public static Thermocouple T { get; } = new(ThermocoupleType.T);

    /// <summary>The thermocouple of that letter.</summary>
    public static Thermocouple Of(ThermocoupleType type) => type == ThermocoupleType.K ? K : T;

    /// <summary>Its letter.</summary>
    public ThermocoupleType Type { get; }
    /// <summary>Lowest temperature of the reference function, K.</summary>
    public double LowestK => 3.15;
    /// <summary>Highest temperature of the reference function, K.</summary>
    public double HighestK => _highestC + ZeroK;
    /// <summary>Voltage at the lowest temperature, V.</summary>
    public double LowestVoltageV { get; }
    /// <summary>Voltage at the highest temperature, V.</summary>
    public double HighestVoltageV { get; }

    /// <summary>Voltage with the other junction at 0 °C, V; range <see cref="LowestK"/> to <see cref="HighestK"/>, held at its ends.</summary>
    /// <param name="temperatureK">Temperature of the measuring junction, K.</param>
    public double VoltageV(double temperatureK) => Millivolt(Math.Clamp(temperatureK - ZeroK, -270, _highestC)) * 1e-3;

    /// <summary>Slope of <see cref="VoltageV"/>, V/K; type K near 77 K: 16 µV/K, at 20 °C: 40 µV/K.</summary>
    /// <param name="temperatureK">Temperature of the junction, K.</param>
    public double SensitivityVPerK(double temperatureK) => Slope(Math.Clamp(temperatureK - ZeroK, -270, _highestC)) * 1e-3;

    /// <summary>Temperature of the measuring junction from a voltage that counts from 0 °C; false outside the reference function.</summary>
    /// <param name="voltageV">V, the other junction at 0 °C.</param>
    /// <param name="temperatureK">K; the nearest end when outside.</param>
    public bool TryTemperatureK(double voltageV, out double temperatureK)
    {
        // written so that a NaN is outside as well
        if (!(voltageV >= LowestVoltageV && voltageV <= HighestVoltageV))
        {
            temperatureK = voltageV > HighestVoltageV ? HighestK : LowestK;
            return false;
        }
        double e = voltageV * 1e3, low = -270, high = _highestC;
        var t = e is < 0 and > -5.9 ? Polynomial(_start, e) : Math.Clamp(e * 25, low, high);
        // Newton, kept inside a shrinking bracket: below -250 °C the slope is nearly nothing.
        for (var i = 0; i < 100; i++)
        {
            var miss = Millivolt(t) - e;
            if (miss > 0) high = Math.Min(high, t);
            else low = Math.Max(low, t);
            var next = t - miss / Slope(t);
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            var step = Math.Abs(next - t);
            t = next;
            if (step < 1e-9 || high - low < 1e-10) break;
        }
        temperatureK = t + ZeroK;
        return true;
    }

    private double Millivolt(double t)
    {
        if (t < 0) return Polynomial(_cold, t);
        var e = Polynomial(_warm, t);
        return Type == ThermocoupleType.K ? e + Ordering(t) : e;
    }

    private double Slope(double t)
    {
        if (t < 0) return Derivative(_cold, t);
        var s = Derivative(_warm, t);
        return Type == ThermocoupleType.K ? s + 2 * OrderingK.A1 * (t - OrderingK.A2) * Ordering(t) : s;
    }

    private static double Ordering(double t) => OrderingK.A0 * Math.Exp(OrderingK.A1 * (t - OrderingK.A2) * (t - OrderingK.A2));

    private static double Polynomial(double[] c, double x)
    {
        var sum = 0.0;
        for (var i = c.Length - 1; i >= 0; i--) sum = sum * x + c[i];
        return sum;
    }

    private static double Derivative(double[] c, double x)
    {
        var sum = 0.0;
        for (var i = c.Length - 1; i > 0; i--) sum = sum * x + i * c[i];
        return sum;
    }
}
