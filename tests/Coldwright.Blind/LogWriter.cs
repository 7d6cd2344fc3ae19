using System.Globalization;
using System.Text;
using Coldwright.Blind.Physics;

namespace Coldwright.Blind;

/// <summary>Writes a case as a person would have it: <c>run.yaml</c> and <c>log.csv</c> with the errors of real sensors.</summary>
public static class LogWriter
{
    private const double RestS = 300, BalanceKg = 0.001, RoomPa = 100800, RoomK = 293.15;
    private static readonly DateTime _start = new(2026, 5, 2, 8, 5, 0);
    private static readonly CultureInfo _ci = CultureInfo.InvariantCulture;

    private sealed record Column(string Name, string At, string Sensor, string Unit, string More, Func<BlindMoment, double> Value, double SystematicK, double Noise, int Decimals, bool Couple = false);

    /// <summary>What a kelvin at the cold junction makes at the tip of a type K couple: NIST Monograph 175 (1993), sensitivities straight between a few temperatures.</summary>
    public static double JunctionGain(double k)
    {
        double[] t = [77, 100, 123, 173, 223, 293], s = [16.0, 20.0, 23.6, 30.5, 35.8, 40.3];
        int i = 0;
        while (i < t.Length - 2 && k > t[i + 1]) i++;
        return 40.3 / Math.Clamp(s[i] + (k - t[i]) / (t[i + 1] - t[i]) * (s[i + 1] - s[i]), 14, 42);
    }

    /// <summary>The two texts.</summary>
    /// <param name="c">The case.</param>
    /// <param name="set">What is measured.</param>
    /// <param name="seed">Seed of the sensors' errors.</param>
    /// <param name="untilS">End of the record, s after the start.</param>
    /// <param name="day">Another day than 0 has the same sensors with the same errors, and noise of its own.</param>
    /// <param name="errors">Draws of the sensors' errors, the lasting ones first, in standard deviations; null: drawn from the seed.</param>
    public static (string Run, string Log) Write(BlindCase c, SensorSet set, int seed, double untilS = BlindMarch.EndS, int day = 0, Func<double>? errors = null)
    {
        var random = new Random(unchecked(seed * 7919 + c.Number * 17 + (int)set));
        double Normal() => errors is not null ? errors() : Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        bool fed = c.Course.FedKg > 0;
        double openS = c.Truth.Of("discharge-too-warm", 0) > 0 ? BlindMarch.EarlyOpenS : BlindMarch.OpenS;
        var run = new StringBuilder();
        run.AppendLine(_ci, $"name: blind {c.Number}").AppendLine("start: 2026-05-02 08:00").AppendLine("room: {temperature: 20 °C, pressure: 1008 mbara, pressure-uncertainty: 1 mbar}");
        var columns = Columns(set, Normal, c).ToArray();
        if (day > 0)
        {
            // the first row draws what is left of the sensors' errors
            foreach (var x in columns) Shown(x, Moment(c.Course.Moments, -RestS, c), c, Normal);
            random = new Random(unchecked(seed * 7919 + c.Number * 17 + (int)set + 104_729 * day));
        }
        if (set != SensorSet.Bare) run.AppendLine("log: {file: log.csv}");
        run.AppendLine("channels:");
        foreach (var x in columns) run.AppendLine(_ci, $"  {x.Name}: {{{(set == SensorSet.Bare ? "" : $"column: {x.Name}, ")}at: {x.At}, sensor: {x.Sensor}, {(set == SensorSet.Bare ? "" : $"unit: {x.Unit}, ")}{x.More}}}");
        var moments = c.Course.Moments;
        var log = new StringBuilder();
        if (set == SensorSet.Bare)
        {
            run.AppendLine("readings:");
            for (double t = -RestS; t < untilS; t += 600) run.AppendLine(_ci, $"  - {{time: \"{At(t)}\", values: {{{string.Join(", ", columns.Select(x => $"{x.Name}: {Shown(x, Moment(moments, t, c), c, Normal).ToString("F" + x.Decimals, _ci)} {x.Unit}"))}}}}}");
        }
        else
        {
            log.Append("time").AppendJoin("", columns.Select(x => "," + x.Name)).Append('\n');
            for (double t = -RestS; t < untilS; t += BlindMarch.KeepS)
            {
                var m = Moment(moments, t, c);
                log.Append(_start.AddSeconds(t).ToString("yyyy-MM-dd HH:mm:ss", _ci));
                foreach (var x in columns) log.Append(',').Append(Shown(x, m, c, Normal).ToString("F" + x.Decimals, _ci));
                log.Append('\n');
            }
        }
        run.AppendLine("events:").AppendLine(_ci, $"  - {{time: \"{At(0)}\", what: start, at: compressor}}");
        if (fed)
        {
            run.AppendLine(_ci, $"  - {{time: \"{At(BlindMarch.FeedOnS)}\", what: feed-on, at: fill-valve}}").AppendLine(_ci, $"  - {{time: \"{At(BlindMarch.FeedOffS)}\", what: feed-off, at: fill-valve}}");
            run.AppendLine(_ci, $"  - {{time: \"{At(openS)}\", what: valve-open, at: drain-valve}}").AppendLine(_ci, $"  - {{time: \"{At(openS + 300)}\", what: valve-shut, at: drain-valve}}");
            if (set != SensorSet.Bare) Weigh(run, openS + 360, c.Course.CollectedKg + BalanceKg * Normal());
            if (set == SensorSet.Full) Weigh(run, openS + 2160, Math.Max(0, c.Course.CollectedKg - 1800 * c.Course.FlaskLossKgPerS + BalanceKg * Normal()));
        }
        run.AppendLine(_ci, $"  - {{time: \"{At(BlindMarch.StopS)}\", what: stop, at: compressor}}");
        return (run.ToString(), log.ToString());
    }

    /// <summary>Chi-square between what two machines' sensors show without their errors, under the sensors' noise.</summary>
    /// <param name="a">One machine.</param>
    /// <param name="b">Another.</param>
    /// <param name="set">What is measured.</param>
    /// <param name="untilS">End of the record, s after the start.</param>
    public static double Distance(BlindCase a, BlindCase b, SensorSet set, double untilS = BlindMarch.EndS)
    {
        // sensors without errors: all draws nothing
        Column[] of = [.. Columns(set, () => 0, a)], other = [.. Columns(set, () => 0, b)];
        double sum = 0;
        for (int i = 0; i < of.Length; i++)
            for (double t = -RestS; t < untilS; t += set == SensorSet.Bare ? 600 : BlindMarch.KeepS)
            {
                double d = (Shown(of[i], Moment(a.Course.Moments, t, a), a, () => 0) - Shown(other[i], Moment(b.Course.Moments, t, b), b, () => 0)) / InUnit(of[i]);
                sum += d * d;
            }
        if (set != SensorSet.Bare) sum += Square((a.Course.CollectedKg - b.Course.CollectedKg) / BalanceKg);
        if (set == SensorSet.Full) sum += Square((Left(a) - Left(b)) / BalanceKg);
        return sum;
        static double Left(BlindCase c) => Math.Max(0, c.Course.CollectedKg - 1800 * c.Course.FlaskLossKgPerS);
        static double Square(double x) => x * x;
    }

    // a column's noise in the unit it is written in
    private static double InUnit(Column x) => Math.Max(x.Unit == "barg" ? x.Noise / 1e5 : x.Noise, 0.3 * Math.Pow(10, -x.Decimals));

    private static void Weigh(StringBuilder run, double t, double kg) => run.AppendLine(_ci, $"  - {{time: \"{At(t)}\", what: weighed, at: flask, mass: {Math.Max(0, kg) * 1000:0.0} g, tare: 0 g, uncertainty: 1 g}}");

    private static string At(double t) => _start.AddSeconds(t).ToString("HH:mm:ss", _ci);

    private static BlindMoment Moment(IReadOnlyList<BlindMoment> all, double t, BlindCase c)
    {
        if (t >= 0) return all[Math.Min(all.Count - 1, (int)(t / BlindMarch.KeepS))];
        return new BlindMoment(t, RoomK, RoomK, RoomK, RoomK, RoomK, RoomK, c.Course.RestPa, c.Course.RestPa, 0, 0, 0, ArgonBatch.FeedPa, 0);
    }

    private static double Shown(Column x, BlindMoment m, BlindCase c, Func<double> normal)
    {
        double v = x.Value(m);
        if (x.Couple)
        {
            v += c.Truth.Of("cold-junction", 0) * JunctionGain(v) + x.SystematicK * (0.5 + 0.5 * (RoomK - v) / 200);
            if (x.Name == "vessel") v += c.Truth.Of("sensor-offset", 0);
        }
        else v += x.SystematicK;
        v += x.Noise * normal();
        return x.Unit switch { "°C" => v - 273.15, "barg" => (v - RoomPa) / 1e5, "kg" or "W" or "kg/h" => v, _ => v };
    }

    private static IEnumerable<Column> Columns(SensorSet set, Func<double> normal, BlindCase c)
    {
        Column Couple(string name, string at, Func<BlindMoment, double> value) => new(name, at, "thermocouple-K", "°C", "class: 1, cold-junction-uncertainty: 0.6 K", value, 0.8 * normal(), 0.15, 1, true);
        Column Platinum(string name, string at, Func<BlindMoment, double> value) => new(name, at, "Pt100", "°C", "class: A", value, 0.2 * normal(), 0.05, 2);
        Column Gauge(string name, string at, Func<BlindMoment, double> value, double span, double grade) => new(name, at, "pressure-gauge", "barg", string.Create(_ci, $"class: {grade}, span: {span} bar"), value, grade / 100 * span * 1e5 / 1.8 * normal(), set == SensorSet.Bare ? 4000 : 800, 2);
        Column Meter(string name, string at, Func<BlindMoment, double> value, double share) => new(name, at, "power-meter", "W", string.Create(_ci, $"relative-uncertainty: {100 * share} %"), m => value(m) * Scale(name, share), 0, 3, 1);
        var scales = new Dictionary<string, double>();
        double Scale(string name, double share) => scales.TryGetValue(name, out double v) ? v : scales[name] = 1 + share * normal();
        yield return Couple("vessel", "vessel, end: surface", m => m.LoadK);
        if (set == SensorSet.Bare)
        {
            yield return Gauge("high", "aftercooler, end: outlet", m => m.HighPa, 40, 1.6);
            yield return Gauge("low", "recuperator.low, end: outlet", m => m.LowPa, 16, 1.6);
            yield break;
        }
        double grade = set == SensorSet.Full ? 0.25 : 0.5;
        yield return Gauge("high", "aftercooler, end: outlet", m => m.HighPa, 40, grade);
        yield return Gauge("low", "recuperator.low, end: outlet", m => m.LowPa, 16, grade);
        yield return Couple("before-throttle", "throttle, end: inlet", m => m.ThrottleInletK);
        yield return set == SensorSet.Full ? Platinum("precooled", "precooler.high, end: outlet", m => m.PrecooledK) : Couple("precooled", "precooler.high, end: outlet", m => m.PrecooledK);
        yield return Meter("power", "machine", m => m.PowerW, 0.01);
        if (set != SensorSet.Full) yield break;
        yield return Couple("coil-out", "coil, end: outlet", m => m.CoilOutletK);
        yield return Platinum("return", "recuperator.low, end: outlet", m => m.ReturnK);
        yield return Couple("discharge", "compressor, end: outlet", m => m.DischargeK);
        yield return Meter("compressor-power", "compressor", m => m.CompressorW, 0.01);
        yield return new Column("flow", "aftercooler", "flow-meter", "kg/h", "relative-uncertainty: 2 %", m => m.MassFlow * 3600 * Scale("flow", 0.02), 0, 0.01, 4);
        yield return Gauge("vessel-pressure", "vessel", m => m.VesselPa, 25, 0.5);
        yield return new Column("bottle", "bottle", "balance", "kg", "uncertainty: 1 g", m => 21.5 - m.BottleKg, 0, 0.0003, 4);
    }
}
