using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>Both streams along the recuperator, with the closest approach and the phases named.</summary>
internal sealed class RecuperatorPicture
{
    private readonly IReadOnlyList<RecuperatorStation> _stations;
    private readonly RecuperatorStation _pinch;
    private readonly Readout _readout;

    public RecuperatorPicture(ModelRating rating, Readout readout)
    {
        (_stations, _readout) = (rating.Recuperator, readout);
        _pinch = _stations.MinBy(Gap)!;
    }

    /// <summary>The station where the streams come closest.</summary>
    public RecuperatorStation Pinch => _pinch;

    public string Caption =>
        $"Inside the recuperator the high-pressure stream (warm colour) flows from left to right and is cooled by the low-pressure stream (cold colour) that returns from right to left. " +
        $"Left is the warm end, right the cold end. Where the lines come close, heat passes slowly: here they are closest, {_readout.Difference(Gap(_pinch))} apart, " +
        $"where the high-pressure stream is at {_readout.Temperature(_pinch.HighStreamK)} ({Phases(_pinch.HighPhases)}) and the low-pressure stream is {Phases(_pinch.LowPhases)}. " +
        "They can never cross; the lower picture shows the distance on its own. The bars name what each stream is made of: while a stream condenses or boils its temperature changes slowly and the line runs flat.";

    /// <summary>The temperatures, and below them on the same scale how far apart they are.</summary>
    public string Draw(ChartSize size) => Chart(size).Draw(size) + Apart(size).Draw(size with { Height = size.IsPhone ? 190 : 210 });

    public void Table(HtmlText html) => html.Table(
        [">share of heat exchanged", ">high-pressure stream", ">low-pressure stream", ">apart", "high-pressure phases", "low-pressure phases"],
        _stations.Select(s => new[]
        {
            _readout.Percent(s.DutyShare), _readout.TemperatureFull(s.HighStreamK), _readout.TemperatureFull(s.LowStreamK), _readout.Difference(Gap(s)), Phases(s.HighPhases), Phases(s.LowPhases),
        }));

    /// <summary>Phase names as words: <c>vapour + second liquid</c>.</summary>
    internal static string Phases(string names) => names.Replace("+", " + ").Replace('_', ' ');

    private LineChart Chart(ChartSize size)
    {
        var (high, low) = (Points(s => s.HighStreamK), Points(s => s.LowStreamK));
        return new()
        {
            Description = $"Temperatures of both streams along the recuperator. Closest approach {_readout.Difference(Gap(_pinch))} at {_readout.Temperature(_pinch.HighStreamK)}.",
            X = Share(size),
            Y = Axis.Around($"temperature, {_readout.TemperatureSymbol}", high.Concat(low).Select(p => p.Y)),
            Areas = [new(Ink.Plain, _stations.Select(s => (100 * s.DutyShare, _readout.TemperatureValue(s.LowStreamK), _readout.TemperatureValue(s.HighStreamK))).ToArray())],
            Curves =
            [
                new(size.IsPhone ? "high pressure" : "high-pressure stream, being cooled →", Ink.High, high, Hovers("high pressure", s => s.HighStreamK, s => s.HighPhases)),
                new(size.IsPhone ? "low pressure" : "← low-pressure stream, returning", Ink.Low, low, Hovers("low pressure", s => s.LowStreamK, s => s.LowPhases)),
            ],
            Marks =
            [
                new(100 * _pinch.DutyShare, _readout.TemperatureValue((_pinch.LowStreamK + _pinch.HighStreamK) / 2), Ink.Plain,
                    ["pinch (closest):", $"{_readout.Difference(Gap(_pinch))} at {_readout.Temperature(_pinch.HighStreamK)}"]),
            ],
            Above = new("high", Ink.High, Ranges(s => s.HighPhases)),
            Below = new("low", Ink.Low, Ranges(s => s.LowPhases)),
        };
    }

    private LineChart Apart(ChartSize size)
    {
        (double X, double Y)[] gaps = [.. _stations.Select(s => (100 * s.DutyShare, _readout.DifferenceValue(Gap(s))))];
        return new()
        {
            Description = $"Temperature difference between the streams along the recuperator, smallest {_readout.Difference(Gap(_pinch))}.",
            X = Share(size),
            Y = new($"streams apart, {_readout.TemperatureSymbol}", 0, gaps.Max(p => p.Y)),
            Areas = [new(Ink.Plain, gaps.Select(p => (p.X, 0.0, p.Y)).ToArray())],
            Curves = [new("", Ink.Plain, gaps, Hovers("high pressure", s => s.HighStreamK, s => s.HighPhases))],
            Marks = [new(100 * _pinch.DutyShare, _readout.DifferenceValue(Gap(_pinch)), Ink.Plain, [$"pinch {_readout.Difference(Gap(_pinch))}"])],
        };
    }

    private static Axis Share(ChartSize size) => new(size.IsPhone ? "share of the heat exchanged, %" : "share of the heat exchanged, % (warm end left, cold end right)", 0, 100, true);

    private (double X, double Y)[] Points(Func<RecuperatorStation, double> temperatureK) =>
        [.. _stations.Select(s => (100 * s.DutyShare, _readout.TemperatureValue(temperatureK(s))))];

    private string[] Hovers(string stream, Func<RecuperatorStation, double> temperatureK, Func<RecuperatorStation, string> phases) =>
        [.. _stations.Select(s => $"{stream}: {_readout.TemperatureFull(temperatureK(s))}, {Phases(phases(s))}, streams {_readout.Difference(Gap(s))} apart")];

    // Neighbouring stations with the same phases make one range; the border lies midway between two stations.
    private (double, double, string, string)[] Ranges(Func<RecuperatorStation, string> phases)
    {
        var ranges = new List<(double, double, string, string)>();
        double from = _stations[0].DutyShare;
        for (var i = 0; i < _stations.Count; i++)
        {
            var last = i + 1 == _stations.Count;
            if (!last && phases(_stations[i + 1]) == phases(_stations[i])) continue;
            var to = last ? _stations[i].DutyShare : (_stations[i].DutyShare + _stations[i + 1].DutyShare) / 2;
            var text = Phases(phases(_stations[i]));
            ranges.Add((100 * from, 100 * to, text, Short(text)));
            from = to;
        }
        return [.. ranges];
    }

    private static string Short(string phases) => phases switch
    {
        "vapour + liquid + second liquid" or "liquid + second liquid" => "2 liquids",
        "vapour + liquid" => "both",
        _ => phases,
    };

    private static double Gap(RecuperatorStation s) => s.HighStreamK - s.LowStreamK;
}
