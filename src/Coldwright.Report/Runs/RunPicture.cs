using System.Globalization;
using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;

namespace Coldwright.Report.Runs;

/// <summary>All channels of one quantity against time, with their uncertainty, what was left out, and the events.</summary>
internal sealed class RunPicture(RunReport report, Measured measured, RunUnits units, bool namesEvents)
{
    private const int MostEvents = 20;
    private const int MostRows = 40;

    private readonly RunChannel[] _channels = [.. report.Record.Channels.Where(c => c.Measured == measured && c.GoodCount > 0 && c.Sensor.Kind.Element != SensorElement.Barometer)];
    private readonly (double Scale, string Word) _time = (report.Record.LastS - report.Record.FirstS) switch
    {
        > 5 * 86400 => (86400.0, "days"),
        > 5400 => (3600.0, "h"),
        > 300 => (60.0, "min"),
        _ => (1.0, "s"),
    };

    /// <summary>True when there is something to draw.</summary>
    public bool HasSomething => _channels.Length > 0 && report.Record.LastS > report.Record.FirstS;

    /// <summary>Heading.</summary>
    public string Title => measured switch
    {
        Measured.Temperature => "Temperatures",
        Measured.Pressure => "Pressures",
        Measured.Power => "Electrical power",
        Measured.Energy => "Electrical energy",
        Measured.Mass => "Masses",
        _ => "Mass flows",
    };

    /// <summary>What to see.</summary>
    public string Caption => $"Each line is what its sensor says; the pale band around it is twice the standard uncertainty either way"
        + (measured == Measured.Temperature && _channels.Any(c => c.Sensor.Kind.Thermocouple is not null) ? ". A thermocouple gives less and less voltage for a kelvin as it gets cold, so its band widens" : "")
        + (HasFaults ? ". Where a line is broken, or marked, samples were left out; the log stays as it is" : "") + "."
        + (!namesEvents && Shown().Any() ? " Dotted lines as above." : Shown().Any() ? $" Dotted lines: {string.Join("; ", Shown().Select(e => $"{e.Number} {RunWords.Brief(e.Event)}"))}." : "");

    /// <summary>The picture.</summary>
    public string Draw(ChartSize size)
    {
        double from = report.Record.FirstS, to = report.Record.LastS;
        var curves = new List<Curve>();
        var areas = new List<Area>();
        for (var i = 0; i < _channels.Length; i++)
        {
            var (c, ink, thin) = (_channels[i], InkOf(i), Enumerable.Range(0, i).Any(k => InkOf(k) == InkOf(i)));
            var pieces = RunThinning.Pieces(c, from, to);
            var longest = pieces.MaxBy(p => p.Count);
            foreach (var piece in pieces.Where(p => p.Count > 1))
            {
                curves.Add(new(ReferenceEquals(piece, longest) ? c.Name : "", ink, [.. piece.Select(k => (X(c, k), units.OnAxis(measured, c.Values[k])))],
                    [.. piece.Select(k => $"{c.Name}: {units.Value(measured, c.Values[k])} ± {units.Spread(measured, c.StandardUncertainties[k])} at {units.Moment(c.TimesS[k])}")], thin));
                areas.Add(new(ink, [.. piece.Select(k => (X(c, k), units.OnAxis(measured, c.Values[k] - 2 * c.StandardUncertainties[k]), units.OnAxis(measured, c.Values[k] + 2 * c.StandardUncertainties[k])))]));
            }
        }
        var values = areas.SelectMany(a => a.Points).SelectMany(p => new[] { p.Low, p.High }).Concat(_channels.SelectMany(c => new[] { c.Lowest, c.Highest }).Select(v => units.OnAxis(measured, v)));
        return new LineChart
        {
            Description = $"{Title} against time: {string.Join(", ", _channels.Select(c => $"{c.Name} from {units.Value(measured, c.Lowest)} to {units.Value(measured, c.Highest)}"))}.",
            X = new($"time from the start, {_time.Word}", from / _time.Scale, to / _time.Scale, true),
            Y = Axis.Around($"{Title.ToLowerInvariant()}, {units.Symbol(measured)}", values, 0.06),
            Areas = areas,
            Curves = curves,
            Uprights = [.. Uprights(size)],
            Marks = [.. Spikes()],
            Below = Left(size),
        }.Draw(size);
    }

    /// <summary>The numbers.</summary>
    public void Table(HtmlText html)
    {
        var axis = _channels.Select(c => c.Axis).MaxBy(a => a.Count)!;
        var every = Math.Max(1, (axis.Count + MostRows - 1) / MostRows);
        html.Table([">time", .. _channels.Select(c => ">" + c.Name)], Enumerable.Range(0, axis.Count).Where(i => i % every == 0 || i == axis.Count - 1).Select(i =>
            (IReadOnlyList<string>)[units.Moment(axis.TimesS[i]), .. _channels.Select(c => c.LastGood(axis.TimesS[i]) is { } v && v.AgeS < 600 ? units.Value(measured, v.Value) : "")]));
    }

    private double X(RunChannel c, int k) => c.TimesS[k] / _time.Scale;

    private bool HasFaults => _channels.Any(c => c.GoodCount < c.Count) || report.Record.Faults.Any(f => f.Kind == FaultKind.Gap);

    // Events that lie close together share a line and their numbers; the caption says what they are.
    private IEnumerable<Upright> Uprights(ChartSize size)
    {
        var near = (size.IsPhone ? 0.05 : 0.018) * (report.Record.LastS - report.Record.FirstS);
        var shown = Shown().ToArray();
        for (var i = 0; i < shown.Length;)
        {
            var end = i + 1;
            while (end < shown.Length && shown[end].Event.TimeS - shown[end - 1].Event.TimeS < near) end++;
            var word = end - i == 1 ? $"{shown[i].Number}" : $"{shown[i].Number}–{shown[end - 1].Number}";
            yield return new Upright(shown[i].Event.TimeS / _time.Scale, Ink.Plain, [word]);
            i = end;
        }
    }

    private IEnumerable<(int Number, RunEvent Event)> Shown() => report.Record.Events.Where(e => e.Kind != EventKind.Noted).Take(MostEvents).Select((e, i) => (i + 1, e));

    private IEnumerable<Mark> Spikes()
    {
        foreach (var f in report.Record.Faults.Where(f => f.Kind == FaultKind.Spike))
        {
            if (_channels.FirstOrDefault(c => c.Name == f.Channel) is not { } c) continue;
            var i = c.Axis.IndexAt(f.FromS + 1e-6);
            // A spike may lie far off the picture; its mark stands where the line should be.
            if (i >= 0 && c.LastGood(f.FromS) is { } near) yield return new(f.FromS / _time.Scale, units.OnAxis(measured, near.Value), Ink.Plain, [f.Count == 1 ? "spike left out" : $"first of {f.Count} spikes left out"]);
        }
    }

    private Strip? Left(ChartSize size)
    {
        var ranges = new List<(double, double, string, string)>();
        foreach (var f in report.Record.Faults.Where(f => f.ToS > f.FromS && (f.Kind == FaultKind.Gap || f.Kind == FaultKind.Frozen && _channels.Any(c => c.Name == f.Channel))).OrderBy(f => f.FromS))
        {
            var from = Math.Max(f.FromS, ranges.Count > 0 ? ranges[^1].Item2 * _time.Scale : report.Record.FirstS);
            if (f.ToS <= from) continue;
            ranges.Add((from / _time.Scale, f.ToS / _time.Scale, f.Kind == FaultKind.Gap ? "nothing logged" : $"{f.Channel} frozen", f.Kind == FaultKind.Gap ? "gap" : "frozen"));
        }
        return ranges.Count == 0 ? null : new(size.IsPhone ? "" : "left out", Ink.Loss, ranges);
    }

    // Warm colour for what belongs to the high-pressure stream, cold for the low one, as in every picture; the rest in turn.
    private Ink InkOf(int i)
    {
        var port = _channels[i].Place.Port;
        if (port == Whereabouts.Room) return Ink.Loss;
        if (port.EndsWith(".high", StringComparison.Ordinal) || _channels[i].Name.Contains("high", StringComparison.OrdinalIgnoreCase)) return Ink.High;
        if (port.EndsWith(".low", StringComparison.Ordinal) || _channels[i].Name.Contains("low", StringComparison.OrdinalIgnoreCase)) return Ink.Low;
        Ink[] rest = [Ink.Cooling, Ink.Leak, Ink.Second, Ink.Plain];
        var before = Enumerable.Range(0, i).Count(k => rest.Contains(InkOf(k)));
        return rest[before % rest.Length];
    }
}
