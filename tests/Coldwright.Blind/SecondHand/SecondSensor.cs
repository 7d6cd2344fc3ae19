using System.Globalization;
using Coldwright.Blind.Physics;

namespace Coldwright.Blind.SecondHand;

/// <summary>One channel of a log: where it sits, what it truly sees, and its errors.</summary>
/// <param name="Name">Channel.</param>
/// <param name="Place">Where, as <c>run.yaml</c> has it.</param>
/// <param name="Kind">Sensor.</param>
/// <param name="More">What <c>run.yaml</c> says of its quality.</param>
/// <param name="Value">What is there: K, Pa, W, kg/s or kg.</param>
/// <param name="Lasting">Error that stays: K at the cold end, Pa, or share of the reading.</param>
/// <param name="Noise">Of a sample, in the unit of the value.</param>
internal sealed record SecondSensor(string Name, string Place, string Kind, string More, Func<BlindMoment, double> Value, double Lasting, double Noise)
{
    private const double RoomK = 293.15;

    public bool IsCouple => Kind.StartsWith("thermocouple", StringComparison.Ordinal);
    public bool IsTemperature => IsCouple || Kind == "Pt100";
    public bool IsPressure => Kind == "pressure-gauge";

    /// <summary>Kelvin at the tip for a kelvin at the terminals: sensitivities after NIST Monograph 175 (1993), rounded, from memory; straight between.</summary>
    public static double JunctionGain(double k, bool typeK)
    {
        double[] t = [73, 123, 173, 223, 273, 298], s = typeK ? [15.2, 23.5, 30.5, 35.8, 39.4, 40.5] : [15.7, 22.4, 28.4, 33.9, 38.7, 40.7];
        int i = 0;
        while (i < t.Length - 2 && k > t[i + 1]) i++;
        return s[^1] / Math.Clamp(s[i] + (k - t[i]) / (t[i + 1] - t[i]) * (s[i + 1] - s[i]), 13, 42);
    }

    /// <summary>What it shows without noise, in SI.</summary>
    /// <param name="m">The moment.</param>
    /// <param name="truth">The machine and its faults.</param>
    /// <param name="terminalsK">How far the terminals have wandered, K.</param>
    public double Shown(BlindMoment m, Truth truth, double terminalsK)
    {
        double v = Value(m);
        if (IsCouple) v += (truth.Of("cold-junction", 0) + terminalsK) * JunctionGain(v, Kind.EndsWith('K')) + Lasting * (0.3 + 0.7 * (RoomK - v) / 200);
        else if (IsTemperature || IsPressure) v += Lasting;
        else v *= 1 + Lasting;
        return Name == "vessel" ? v + truth.Of("sensor-offset", 0) : v;
    }

    /// <summary>Channels of a builder.</summary>
    /// <param name="habits">The builder.</param>
    /// <param name="normal">Draws in standard deviations.</param>
    public static SecondSensor[] All(Habits habits, Func<double> normal)
    {
        double wide = habits.Noise == NoiseKind.Bursts ? 1.5 : 1;
        var all = new List<SecondSensor>();
        void Couple(string name, string place, string kind, Func<BlindMoment, double> v) => all.Add(new(name, place, kind, "class: 1, cold-junction-uncertainty: 0.7 K", v, 0.8 * normal(), 0.12 * wide));
        void Platinum(string name, string place, Func<BlindMoment, double> v) => all.Add(new(name, place, "Pt100", "class: B", v, 0.3 * normal(), 0.04 * wide));
        void Gauge(string name, string place, double span, double grade, Func<BlindMoment, double> v) =>
            all.Add(new(name, place, "pressure-gauge", string.Create(CultureInfo.InvariantCulture, $"class: {grade}, span: {span} bar"), v, grade / 180 * span * 1e5 * normal(), (habits.ByHand ? 6000 : 1200) * wide));
        void Share(string name, string place, string kind, double share, double noise, Func<BlindMoment, double> v) => all.Add(new(name, place, kind, string.Create(CultureInfo.InvariantCulture, $"relative-uncertainty: {100 * share} %"), v, share * normal(), noise));
        double grade = habits.ByHand ? 1.6 : 0.5;
        // all are drawn, whatever the builder has: another day, or another set, finds the same errors
        Couple("vessel", "at: vessel, end: surface", habits.VesselSensor, m => m.LoadK);
        Gauge("high", "at: aftercooler, end: outlet", 40, grade, m => m.HighPa);
        Gauge("low", "at: compressor, end: inlet", 25, grade, m => m.LowPa);
        Couple("before-throttle", "at: throttle, end: inlet", "thermocouple-K", m => m.ThrottleInletK);
        Platinum("precooled", "at: precooler.high, end: outlet", m => m.PrecooledK);
        Share("power", "at: machine", "power-meter", 0.015, 4, m => m.PowerW);
        Couple("coil-out", "at: coil, end: outlet", "thermocouple-T", m => m.CoilOutletK);
        Platinum("return", "at: recuperator.low, end: outlet", m => m.ReturnK);
        Couple("discharge", "at: compressor, end: outlet", "thermocouple-K", m => m.DischargeK);
        Share("compressor-power", "at: compressor", "power-meter", 0.015, 4, m => m.CompressorW);
        Share("flow", "at: aftercooler", "flow-meter", 0.03, 2e-5, m => m.MassFlow);
        Gauge("vessel-pressure", "at: vessel", 25, 0.5, m => m.VesselPa);
        all.Add(new("bottle", "at: bottle", "balance", "uncertainty: 2 g", m => 23.2 - m.BottleKg, 0, 0.0006));
        return [.. all.Where(s => habits.Channels.Contains(s.Name))];
    }
}
