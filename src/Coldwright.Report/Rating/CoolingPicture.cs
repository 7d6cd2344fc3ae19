using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>Cooling power and heat leak against the load's temperature; they cross at the no-load temperature.</summary>
internal sealed class CoolingPicture
{
    private readonly ModelRating _rating;
    private readonly ModelRating? _second;
    private readonly Readout _readout;

    public CoolingPicture(RatingReport report, Readout readout) => (_rating, _second, _readout) = (report.Main, report.Result.SecondOpinion, readout);

    public string Caption
    {
        get
        {
            var text = "The upper line is the heat that the cold end can take up when the load is held at the temperature below; the lower line is the heat that leaks in through the insulation at that temperature. What lies between them is left for useful work. ";
            text += _rating.NoLoadTemperatureK is { } noLoad
                ? $"Where they meet, at {_readout.TemperatureFull(noLoad)}, nothing is left: that is as cold as this cooler gets with no load. "
                : "They do not meet in the range computed, so no lowest temperature can be read from the picture. ";
            if (_rating.Liquid is { CondensingTemperatureK: { } condensing } liquid)
                text += $"The dotted line is where {liquid.Substance} turns to liquid at {_readout.Pressure(liquid.CondensingPressurePa)}, {_readout.TemperatureFull(condensing)}; " +
                    (CoolingReading.FeedLoadW(_rating) is { } load ? $"there the feed gas takes up the {_readout.Watts(load)} that are left, and that sets the litres per hour. " : "nothing is left there for the feed gas. ");
            if (_second is not null) text += $"The thin line is the {_second.Model} model's second opinion: the distance between the two says how far the answer can be trusted.";
            return text.TrimEnd();
        }
    }

    public string Draw(ChartSize size) => Chart(size.IsPhone).Draw(size);

    public void Table(HtmlText html) => html.Table(
        [">load temperature", ">gross cooling", ">heat leak", ">left (net)", ">streams apart at the warm end", ">pinch", ">pinch where the high stream is at"],
        _rating.CoolingCurve.Select(p => new[]
        {
            _readout.TemperatureFull(p.TemperatureK), _readout.Watts(p.GrossCoolingW), _readout.Watts(p.HeatLeakW), _readout.Watts(p.NetCoolingW),
            _readout.Difference(p.WarmEndDifferenceK), _readout.Difference(p.PinchK), _readout.Temperature(p.PinchTemperatureK),
        }));

    private LineChart Chart(bool phone)
    {
        var curve = _rating.CoolingCurve;
        var powers = curve.SelectMany(p => new[] { p.GrossCoolingW, p.HeatLeakW }).Concat(_second?.CoolingCurve.Select(p => p.GrossCoolingW) ?? []).Append(0).ToArray();
        return new()
        {
            Description = $"Cooling power and heat leak against load temperature{(_rating.NoLoadTemperatureK is { } n ? $"; no-load temperature {_readout.Temperature(n)}" : "")}.",
            X = Axis.Around($"load temperature, {_readout.TemperatureSymbol}", Temperatures().Select(_readout.TemperatureValue)),
            Y = new(phone ? "W" : "heat flow, W", powers.Min(), Math.Max(powers.Max() * 1.05, 1e-3)),
            Areas = NetArea(),
            Curves = [.. Curves(phone)],
            Uprights = [.. Uprights()],
            Spans = [.. FeedLoad(phone)],
            Marks = _rating.NoLoadTemperatureK is { } noLoad && CoolingReading.At(curve, noLoad) is { } at
                ? [new(_readout.TemperatureValue(noLoad), at.LeakW, Ink.Cooling, ["no-load temperature", _readout.Temperature(noLoad)])]
                : [],
        };
    }

    private IEnumerable<double> Temperatures()
    {
        var temperatures = _rating.CoolingCurve.Select(p => p.TemperatureK).Append(_rating.OperatingTemperatureK);
        if (_second is not null) temperatures = temperatures.Concat(_second.CoolingCurve.Select(p => p.TemperatureK));
        return _rating.Liquid?.CondensingTemperatureK is { } condensing ? temperatures.Append(condensing) : temperatures;
    }

    private IEnumerable<Curve> Curves(bool phone)
    {
        yield return Line(phone ? "cooling" : "cooling the cold end can give (gross)", Ink.Cooling, _rating, p => p.GrossCoolingW, "gross cooling");
        yield return Line("heat leak", Ink.Leak, _rating, p => p.HeatLeakW, "heat leak");
        if (_second is { CoolingCurve.Count: > 1 } second)
            yield return Line(phone ? second.Model : $"second opinion: {second.Model} model", Ink.Second, second, p => p.GrossCoolingW, $"gross cooling, {second.Model} model") with { Thin = true };
    }

    private Curve Line(string name, Ink ink, ModelRating rating, Func<CoolingPoint, double> watts, string hover) => new(name, ink,
        [.. rating.CoolingCurve.Select(p => (_readout.TemperatureValue(p.TemperatureK), watts(p)))],
        [.. rating.CoolingCurve.Select(p => $"{_readout.TemperatureFull(p.TemperatureK)}: {hover} {_readout.Watts(watts(p))}, net {_readout.Watts(p.NetCoolingW)}")]);

    // Only where something is left: from the crossing to the warm end.
    private Area[] NetArea()
    {
        var points = _rating.CoolingCurve.Where(p => p.NetCoolingW > 0).Select(p => (_readout.TemperatureValue(p.TemperatureK), p.HeatLeakW, p.GrossCoolingW)).ToList();
        if (_rating.NoLoadTemperatureK is { } noLoad && CoolingReading.At(_rating.CoolingCurve, noLoad) is { } at)
            points.Insert(0, (_readout.TemperatureValue(noLoad), at.LeakW, Math.Max(at.LeakW, at.GrossW)));
        points.Sort((a, b) => a.Item1.CompareTo(b.Item1));
        return points.Count < 2 ? [] : [new(Ink.Cooling, points, "left for the load")];
    }

    private IEnumerable<Upright> Uprights()
    {
        if (_rating.Liquid is { } liquid)
            yield return liquid.CondensingTemperatureK is { } condensing
                ? new(_readout.TemperatureValue(condensing), Ink.Plain, [$"{liquid.Substance} condenses", _readout.Temperature(condensing)])
                : new(_readout.TemperatureValue(_rating.OperatingTemperatureK), Ink.Plain, ["vessel (above the", "critical pressure)", _readout.Temperature(_rating.OperatingTemperatureK)]);
        else
            yield return new(_readout.TemperatureValue(_rating.OperatingTemperatureK), Ink.Plain, ["operating point", _readout.Temperature(_rating.OperatingTemperatureK)]);
    }

    private IEnumerable<Span> FeedLoad(bool phone)
    {
        if (CoolingReading.FeedLoadW(_rating) is { } load && CoolingReading.At(_rating.CoolingCurve, _rating.OperatingTemperatureK) is { } at)
            yield return new(_readout.TemperatureValue(_rating.OperatingTemperatureK), at.LeakW, at.LeakW + load, Ink.Cooling,
                phone ? ["feed gas", _readout.Watts(load)] : ["feed gas takes", _readout.Watts(load)]);
    }
}
