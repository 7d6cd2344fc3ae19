using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Simulation.Cooldown;

namespace Coldwright.Report.Cooldown;

/// <summary>The pictures of a cooldown against time, events marked.</summary>
internal sealed class CooldownPictures
{
    private const int MostRows = 40;

    private readonly CooldownReport _report;
    private readonly Readout _readout;
    private readonly CooldownSeries _s;
    private readonly double _unit;
    private readonly string _word;

    public CooldownPictures(CooldownReport report, Readout readout)
    {
        (_report, _readout, _s) = (report, readout, report.Result.Series);
        (_unit, _word) = CooldownScale.Axis(_s);
    }

    private CooldownResult Result => _report.Result;

    /// <summary>Load, throttle and precooler.</summary>
    public string Temperatures(ChartSize size)
    {
        var curves = new List<Curve> { Line("load", Ink.Cooling, _s.TemperatureK, _readout.TemperatureValue, v => _readout.Temperature(v)) };
        if (!Result.IsWarmUp)
        {
            curves.Add(Line("before the throttle", Ink.High, _s.ThrottleInletK, _readout.TemperatureValue, v => _readout.Temperature(v), thin: true));
            curves.Add(Line(_report.HasPrecooler ? "behind the precooler" : "into the recuperator", Ink.Second, _s.PrecooledK, _readout.TemperatureValue, v => _readout.Temperature(v), thin: true));
        }
        if (!Result.IsWarmUp) curves.Add(Level($"plateau {_readout.Temperature(Result.PlateauK)}", Ink.Plain, Result.PlateauK));
        if (Result.CondensingK is { } c && c > _s.TemperatureK.Min() - 60) curves.Add(Level($"product condenses {_readout.Temperature(c)}", Ink.Leak, c));
        var values = curves.SelectMany(x => x.Points.Select(p => p.Y));
        return new LineChart
        {
            Description = $"Temperatures against time: the load goes from {_readout.Temperature(_s.TemperatureK[0])} to {_readout.Temperature(_s.TemperatureK[^1])}.",
            X = X, Y = Axis.Around($"temperature, {_readout.TemperatureSymbol}", values, 0.05), Curves = curves, Uprights = [.. Uprights()],
        }.Draw(size);
    }

    /// <summary>Where the cooling goes: stacked areas.</summary>
    public string Split(ChartSize size)
    {
        (string Name, Ink Ink, IReadOnlyList<double> W)[] parts =
            [("heat leak", Ink.Leak, _s.LeakW), ("load", Ink.Cooling, _s.LoadW), ("out of the insulation", Ink.Second, _s.InsulationW), ("out of the masses at the load", Ink.Low, _s.LoadMassW), ("out of the recuperator's metal", Ink.High, _s.RecuperatorW)];
        var areas = new List<Area>();
        var curves = new List<Curve>();
        double[] below = new double[_s.TimeS.Count];
        foreach (var (name, ink, w) in parts)
        {
            if (w.All(v => Math.Abs(v) < 0.05)) continue;
            double[] from = [.. below];
            for (var i = 0; i < below.Length; i++) below[i] += Math.Max(0, w[i]);
            areas.Add(new Area(ink, [.. Enumerable.Range(0, below.Length).Select(i => (_s.TimeS[i] / _unit, from[i], below[i]))]));
            // the name stands at the upper edge, where the share is
            curves.Add(new Curve(name, ink, [.. Enumerable.Range(0, below.Length).Select(i => (_s.TimeS[i] / _unit, below[i]))], [.. w.Select((v, i) => $"{name}: {_readout.Watts(v)} at {CooldownScale.Time(_s.TimeS[i])}")], Thin: true));
        }
        if (!Result.IsWarmUp) curves.Add(Line("cooling of the streams", Ink.Plain, _s.CoolingW, v => v, v => _readout.Watts(v)));
        return new LineChart
        {
            Description = "What the cooling is used for, against time, as areas on top of one another.",
            X = X, Y = new Axis("heat, W", Math.Min(0, 1.05 * curves.SelectMany(c => c.Points).Min(p => p.Y)), 1.08 * Math.Max(1, curves.SelectMany(c => c.Points).Max(p => p.Y)), true), Areas = areas, Curves = curves, Uprights = [.. Uprights()],
        }.Draw(size);
    }

    /// <summary>Both pressures.</summary>
    public string Pressures(ChartSize size)
    {
        var us = _readout.Units == UnitSystem.Us;
        List<Curve> curves = Result.IsWarmUp
            ? [Line("loop at rest", Ink.High, _s.HighPressurePa, _readout.PressureValue, v => _readout.Pressure(v))]
            : [Line("high side", Ink.High, _s.HighPressurePa, _readout.PressureValue, v => _readout.Pressure(v)), Line("low side", Ink.Low, _s.LowPressurePa, _readout.PressureValue, v => _readout.Pressure(v))];
        return new LineChart
        {
            Description = $"Pressures against time; the high side is highest at {_readout.Pressure(_s.HighPressurePa.Max())}.",
            X = X, Y = Axis.Around(us ? "pressure, psig" : "pressure, bar absolute", curves.SelectMany(c => c.Points).Select(p => p.Y).Append(0), 0.04), Curves = curves, Uprights = [.. Uprights()],
        }.Draw(size);
    }

    /// <summary>Electrical power and flow.</summary>
    public string Power(ChartSize size) => new LineChart
    {
        Description = $"Electrical power against time, {_readout.Watts(_s.PowerW.Min())} to {_readout.Watts(_s.PowerW.Max())}.",
        X = X, Y = Axis.Around("electrical power, W", _s.PowerW.Append(0), 0.04),
        Curves = [Line("electrical power", Ink.Loss, _s.PowerW, v => v, v => _readout.Watts(v))], Uprights = [.. Uprights()],
    }.Draw(size);

    /// <summary>Numbers behind the temperatures and pressures.</summary>
    public void Table(HtmlText html) => html.Table([">time", ">load", ">before the throttle", ">high side", ">low side", ">flow, mol/s", ">power"], Rows().Select(i => new[]
    {
        CooldownScale.Time(_s.TimeS[i]), _readout.Temperature(_s.TemperatureK[i]), _readout.Temperature(_s.ThrottleInletK[i]), _readout.Pressure(_s.HighPressurePa[i]), _readout.Pressure(_s.LowPressurePa[i]), _readout.Figures(_s.MolarFlow[i], 3), _readout.Watts(_s.PowerW[i]),
    }));

    /// <summary>Numbers behind the split.</summary>
    public void SplitTable(HtmlText html) => html.Table([">time", ">cooling", ">leak", ">load", ">insulation", ">masses at the load", ">recuperator's metal"], Rows().Select(i => new[]
    {
        CooldownScale.Time(_s.TimeS[i]), _readout.Watts(_s.CoolingW[i]), _readout.Watts(_s.LeakW[i]), _readout.Watts(_s.LoadW[i]), _readout.Watts(_s.InsulationW[i]), _readout.Watts(_s.LoadMassW[i]), _readout.Watts(_s.RecuperatorW[i]),
    }));

    /// <summary>The events with their numbers, as a sentence; empty without any.</summary>
    public string EventWords => Result.Events.Count == 0 ? "" : $" Dotted lines: {string.Join("; ", Result.Events.Select((e, i) => $"{i + 1} {_readout.Say(e.Text)} ({CooldownScale.Time(e.TimeS)})"))}.";

    private Axis X => new($"time from the start, {_word}", 0, _s.TimeS[^1] / _unit, true);

    private IEnumerable<int> Rows()
    {
        int every = Math.Max(1, (_s.TimeS.Count + MostRows - 1) / MostRows);
        return Enumerable.Range(0, _s.TimeS.Count).Where(i => i % every == 0 || i == _s.TimeS.Count - 1);
    }

    private IEnumerable<Upright> Uprights() => Result.Events.Select((e, i) => new Upright(e.TimeS / _unit, Ink.Plain, [$"{i + 1}"]));

    private Curve Line(string name, Ink ink, IReadOnlyList<double> values, Func<double, double> onAxis, Func<double, string> text, bool thin = false) =>
        new(name, ink, [.. values.Select((v, i) => (_s.TimeS[i] / _unit, onAxis(v)))], [.. values.Select((v, i) => $"{name}: {text(v)} at {CooldownScale.Time(_s.TimeS[i])}")], thin);

    private Curve Level(string name, Ink ink, double k) => new(name, ink, [(0, _readout.TemperatureValue(k)), (_s.TimeS[^1] / _unit / 2, _readout.TemperatureValue(k)), (_s.TimeS[^1] / _unit, _readout.TemperatureValue(k))], [], Thin: true);
}
