using Coldwright.Report.Charts;
using Coldwright.Report.Cooldown;
using Coldwright.Report.Html;
using Coldwright.Runs.Explain;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Report.Explain;

/// <summary>Pictures of an explained run.</summary>
internal sealed class ExplainPictures(ExplainReport report, Readout readout)
{
    private const int MostPoints = 240;
    private readonly Explanation _e = report.Result;

    /// <summary>Load: measured, as described, with what is thought to be wrong.</summary>
    public string Load(ChartSize size)
    {
        var measured = _e.Measured.Lines[Observable.Load];
        List<Curve> curves =
        [
            Line("measured", Ink.Cooling, measured.TimeS, measured.Value, false),
            Line("as described", Ink.Low, _e.Described.TimeS, _e.Described.LoadK, true),
        ];
        if (!ReferenceEquals(_e.Fitted, _e.Described)) curves.Add(Line("as fitted", Ink.High, _e.Fitted.TimeS, _e.Fitted.LoadK, true));
        return new LineChart
        {
            Description = $"Load against time: {readout.Temperature(_e.End.MeasuredK)} measured at the end of the pull-down, {readout.Temperature(_e.End.DescribedK)} as described.",
            X = new Axis("time from the start of the compressor, h", 0, _e.Measured.LastS / 3600, true), Y = Axis.Around($"load, {readout.TemperatureSymbol}", curves.SelectMany(c => c.Points).Select(p => p.Y), 0.05), Curves = curves,
            Uprights = [new Upright(_e.Measured.EndS / 3600, Ink.Plain, ["end of the pull-down"]), .. _e.Measured.StopS is { } stop && stop > _e.Measured.EndS + 60 ? new[] { new Upright(stop / 3600, Ink.Plain, ["stop"]) } : []],
        }.Draw(size);
    }

    /// <summary>Both pressures, measured and as described.</summary>
    public string Pressures(ChartSize size)
    {
        var curves = new List<Curve>();
        foreach (var (what, name, ink, described) in new[] { (Observable.HighPressure, "high side", Ink.High, _e.Described.HighPressurePa), (Observable.LowPressure, "suction", Ink.Low, _e.Described.LowPressurePa) })
        {
            if (!_e.Measured.Lines.TryGetValue(what, out var line)) continue;
            curves.Add(Pressure(name, ink, line.TimeS, line.Value, false));
            curves.Add(Pressure($"{name}, described", ink, _e.Described.TimeS, described, true));
        }
        return new LineChart
        {
            Description = "Pressures against time, measured and as described.", X = new Axis("time from the start of the compressor, h", 0, _e.Measured.LastS / 3600, true),
            Y = Axis.Around(readout.Units == UnitSystem.Us ? "pressure, psig" : "pressure, bar absolute", curves.SelectMany(c => c.Points).Select(p => p.Y).Append(0), 0.05), Curves = curves,
        }.Draw(size);
    }

    public bool HasPressures => _e.Measured.Lines.ContainsKey(Observable.HighPressure) || _e.Measured.Lines.ContainsKey(Observable.LowPressure);

    /// <summary>Watts: what an endless recuperator would leave, and what takes it.</summary>
    public string Watts(ChartSize size)
    {
        double total = _e.Watts.Sum(w => Math.Max(0, w.Watts)), at = total;
        var bars = new List<Bar> { new("left by an endless recuperator", 0, total, Ink.Cooling, readout.Watts(total), true) };
        foreach (var w in _e.Watts.OrderByDescending(w => w.Watts))
        {
            bars.Add(new Bar(w.Name, at, at - w.Watts, w.Id == "leak" ? Ink.Leak : Ink.Loss, readout.Watts(w.Watts)));
            at -= w.Watts;
        }
        return new BarChart { Description = $"Where {readout.Watts(total)} of cooling go.", AxisLabel = "cooling at the end of the run, W", Bars = bars }.Draw(size);
    }

    /// <summary>Grams: from what was expected in the flask to what was found.</summary>
    public string Grams(ChartSize size)
    {
        var bars = new List<Bar>();
        double at = 0;
        for (int i = 0; i < _e.Grams.Count; i++)
        {
            var (name, kg) = _e.Grams[i];
            bool whole = i == 0 || i == _e.Grams.Count - 1;
            bars.Add(whole ? new Bar(name, 0, 1000 * kg, Ink.Cooling, $"{readout.Figures(1000 * kg, 3)} g", true) : new Bar(name, at, at + 1000 * kg, Ink.Loss, $"{readout.Figures(1000 * kg, 3)} g"));
            at = whole ? 1000 * kg : at + 1000 * kg;
        }
        return new BarChart { Description = "Liquid in the flask, expected and found.", AxisLabel = "liquid in the flask, g", Bars = bars }.Draw(size);
    }

    public void LoadTable(HtmlText html)
    {
        var line = _e.Measured.Lines[Observable.Load];
        html.Table([">time", ">measured", ">described", ">as fitted"], Enumerable.Range(0, 25).Select(i => _e.Measured.LastS * i / 24).Select(t => new[]
        {
            CooldownScale.Time(t), readout.Temperature(line.At(t)), readout.Temperature(At(_e.Described, t)), readout.Temperature(At(_e.Fitted, t)),
        }));
    }

    private static double At(Course c, double t)
    {
        int i = 0;
        while (i < c.TimeS.Count - 1 && c.TimeS[i] < t) i++;
        return c.LoadK[i];
    }

    private Curve Line(string name, Ink ink, IReadOnlyList<double> t, IReadOnlyList<double> k, bool thin) => new(name, ink, [.. Points(t, k).Select(p => (p.T / 3600, readout.TemperatureValue(p.V)))], [.. Points(t, k).Select(p => $"{name}: {readout.Temperature(p.V)} at {CooldownScale.Time(p.T)}")], thin);

    private Curve Pressure(string name, Ink ink, IReadOnlyList<double> t, IReadOnlyList<double> pa, bool thin) => new(name, ink, [.. Points(t, pa).Select(p => (p.T / 3600, readout.PressureValue(p.V)))], [.. Points(t, pa).Select(p => $"{name}: {readout.Pressure(p.V)} at {CooldownScale.Time(p.T)}")], thin);

    private IEnumerable<(double T, double V)> Points(IReadOnlyList<double> t, IReadOnlyList<double> v)
    {
        int every = Math.Max(1, t.Count / MostPoints);
        for (int i = 0; i < t.Count; i++)
            if ((i % every == 0 || i == t.Count - 1) && t[i] >= 0 && t[i] <= _e.Measured.LastS) yield return (t[i], v[i]);
    }
}
