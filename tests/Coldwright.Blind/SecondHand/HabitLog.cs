using System.Globalization;
using System.Text;
using Coldwright.Blind.Physics;

namespace Coldwright.Blind.SecondHand;

/// <summary>Writes a day as one builder would have it.</summary>
internal static class HabitLog
{
    private const double BalanceKg = 0.0012, FlaskKg = 1.108, LeastFedKg = 0.06;
    private static readonly CultureInfo _ci = CultureInfo.InvariantCulture;

    /// <summary>The two texts.</summary>
    /// <param name="c">The case.</param>
    /// <param name="plan">Its day.</param>
    /// <param name="h">The builder.</param>
    /// <param name="lasting">Draws the sensors' lasting errors.</param>
    /// <param name="passing">Draws noise.</param>
    /// <param name="day">Number of the day.</param>
    public static (string Run, string Log) Write(BlindCase c, SecondPlan plan, Habits h, Random lasting, Random passing, int day)
    {
        static double Normal(Random r) => Math.Sqrt(-2 * Math.Log(1 - r.NextDouble())) * Math.Cos(2 * Math.PI * r.NextDouble());
        var sensors = SecondSensor.All(h, () => Normal(lasting));
        // a clock alone is worth trying only across midnight
        DateTime start = new DateTime(2026, 6, 13 + day, h.Form == ClockForm.Clock ? 19 : 8, 40, 0).AddMinutes(lasting.Next(20));
        double fromS = h.FromS, untilS = h.KeepsWarmUp ? plan.EndS : plan.StopS + 90;
        var cells = new CellWriter(h, start, fromS);
        var run = new StringBuilder();
        run.AppendLine(_ci, $"name: hand {c.Number}").AppendLine(_ci, $"start: {(h.Form == ClockForm.ElapsedMinutes ? start.AddSeconds(fromS) : start.Date):yyyy-MM-dd HH:mm}");
        if (h.SaysRoom) run.AppendLine(_ci, $"room: {{temperature: {plan.RoomK - 273.15:0.0} °C, pressure: 1008 mbara}}");
        if (!h.ByHand) run.AppendLine(cells.LogLine);
        run.AppendLine("channels:");
        for (int i = 0; i < sensors.Length; i++) run.AppendLine(cells.Channel(sensors[i], i));
        var noise = new SensorNoise(h, sensors, () => Normal(passing), passing);
        var log = new StringBuilder();
        if (h.ByHand)
        {
            run.AppendLine("readings:");
            for (double t = fromS; t < untilS; t += h.StepS)
            {
                // nobody reads to the second
                double at = Math.Max(-600, t + 60 * passing.Next(-1, 3)), wander = noise.Terminals(h.StepS);
                var m = Moment(c, plan, at);
                run.AppendLine(_ci, $"  - {{time: \"{cells.Watch(at)}\", values: {{{string.Join(", ", sensors.Select(s => $"{s.Name}: {cells.Number(s, noise.Read(s, m, c.Truth, wander, at))} {cells.Unit(s)}"))}}}}}");
            }
        }
        else
        {
            cells.Head(log, sensors);
            for (double t = fromS; t < untilS; t += h.StepS)
            {
                if (h.Gaps.Any(g => t > g.FromS && t < g.ToS)) continue;
                var m = Moment(c, plan, t);
                double wander = noise.Terminals(h.StepS);
                cells.Row(log, t, sensors.Select(s => passing.NextDouble() < h.Spikes ? cells.Nonsense(s, passing) : cells.Number(s, noise.Read(s, m, c.Truth, wander, t))));
            }
        }
        Events(run, c, plan, h, cells, () => Normal(passing));
        return (run.ToString(), log.ToString());
    }

    private static void Events(StringBuilder run, BlindCase c, SecondPlan plan, Habits h, CellWriter cells, Func<double> normal)
    {
        var events = new List<(double At, string Text)>();
        void Event(double at, string text) => events.Add((at, text));
        if (h.NotesStart) Event(0, "what: start, at: compressor");
        // gas alone, without liquid, is no batch: nobody goes on with it
        if (c.Course.FedKg > LeastFedKg)
        {
            double open = c.Truth.Of("discharge-too-warm", 0) > 0 ? plan.FeedOffS + 60 : plan.OpenS;
            Event(plan.FeedOnS, "what: feed-on, at: fill-valve");
            Event(plan.FeedOffS, "what: feed-off, at: fill-valve");
            Event(open, "what: valve-open, at: drain-valve");
            Event(open + SecondPlan.DrainS, "what: valve-shut, at: drain-valve");
            for (int i = 0; i < h.Weighings; i++)
            {
                double later = 480 + 1800 * i, kg = Math.Max(0, c.Course.CollectedKg - 1800 * i * c.Course.FlaskLossKgPerS) + FlaskKg + BalanceKg * normal();
                Event(open + later, string.Create(_ci, $"what: weighed, at: flask, mass: {1000 * kg:0} g, tare: {1000 * FlaskKg:0} g, uncertainty: 2 g"));
            }
        }
        if (h.NotesStop) Event(plan.StopS, "what: stop, at: compressor");
        if (events.Count == 0) return;
        run.AppendLine("events:");
        foreach (var (at, text) in events.OrderBy(e => e.At)) run.AppendLine(_ci, $"  - {{time: \"{cells.Watch(at)}\", {text}}}");
    }

    /// <summary>Chi-square between two machines' sensors without their errors.</summary>
    public static double Distance(BlindCase a, BlindCase b, SecondPlan plan, Habits h)
    {
        double sum = 0, untilS = h.KeepsWarmUp ? plan.EndS : plan.StopS;
        // the vessel alone may hang on another reading each time; the lasting errors are the same for both machines
        foreach (var s in SecondSensor.All(h, () => 0))
            for (double t = h.FromS; t < untilS; t += h.StepS)
            {
                double d = (s.Shown(Moment(a, plan, t), a.Truth, 0) - s.Shown(Moment(b, plan, t), b.Truth, 0)) / s.Noise;
                sum += d * d;
            }
        for (int i = 0; i < h.Weighings; i++) sum += Math.Pow((Left(a, i) - Left(b, i)) / BalanceKg, 2);
        return sum;
        static double Left(BlindCase c, int i) => Math.Max(0, c.Course.CollectedKg - 1800 * i * c.Course.FlaskLossKgPerS);
    }

    private static BlindMoment Moment(BlindCase c, SecondPlan plan, double t)
    {
        var all = c.Course.Moments;
        double room = plan.RoomK;
        if (t < 0) return new BlindMoment(t, room, room, room, room, room, room, c.Course.RestPa, c.Course.RestPa, 0, 0, 0, 2e5, 0);
        int i = (int)(t / SecondDay.StepS);
        return all[Math.Min(i, all.Count - 1)];
    }
}
