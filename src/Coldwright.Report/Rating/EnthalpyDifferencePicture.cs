using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>Isothermal enthalpy difference of the mixture against temperature, with the smallest value in the recuperator's range marked.</summary>
internal sealed class EnthalpyDifferencePicture
{
    private readonly ModelRating _rating;
    private readonly ModelRating? _second;
    private readonly Readout _readout;
    private readonly (double TemperatureK, double DifferenceJPerMol) _least;

    public EnthalpyDifferencePicture(RatingReport report, Readout readout)
    {
        (_rating, _second, _readout) = (report.Main, report.Result.SecondOpinion, readout);
        _least = Least(_rating);
    }

    public string Caption =>
        $"For the circulating mixture: how much more heat a mole carries at the low pressure ({_readout.Pressure(_rating.Loop.LowPressurePa)}) than at the high one ({_readout.Pressure(_rating.Loop.HighPressurePa)}), at the same temperature. " +
        $"The smallest value between the cold end and the recuperator's warm end, {_readout.Figures(_least.DifferenceJPerMol, 3)} J/mol at {_readout.TemperatureFull(_least.TemperatureK)}, is the ceiling: " +
        $"no exchanger, however long, can get more cooling than that out of a mole, here {_readout.Watts(_least.DifferenceJPerMol * _rating.Loop.MolarFlow)} at the flow that circulates." +
        (_second is null ? "" : $" The thin line is the {_second.Model} model's answer for {(_second.Closed is null ? "the same mixture" : "the mixture and the pressures that it finds itself")}.");

    public string Draw(ChartSize size) => Chart(size.IsPhone).Draw(size);

    public void Table(HtmlText html)
    {
        var others = _second?.IsothermalEnthalpyDifference ?? [];
        string[] headings = [">temperature", $">{_rating.Model}, J/mol", .. _second is null ? [] : new[] { $">{_second.Model}, J/mol" }];
        html.Table(headings, _rating.IsothermalEnthalpyDifference.Select(p =>
        {
            string[] row = [_readout.TemperatureFull(p.TemperatureK), _readout.Figures(p.DifferenceJPerMol, 4)];
            return _second is null ? row : (IReadOnlyList<string>)[.. row, Near(others, p.TemperatureK) is { } other ? _readout.Figures(other, 4) : "not computed"];
        }));
    }

    /// <summary>True when there is something to draw.</summary>
    internal static bool Has(ModelRating rating) => rating.IsothermalEnthalpyDifference.Count > 1 && rating.Recuperator.Count > 1;

    /// <summary>The smallest difference between the coldest and the warmest temperature in the recuperator.</summary>
    internal static (double TemperatureK, double DifferenceJPerMol) Least(ModelRating rating)
    {
        var (cold, warm) = (rating.Recuperator.Min(s => s.LowStreamK), rating.Recuperator.Max(s => s.HighStreamK));
        var inside = rating.IsothermalEnthalpyDifference.Where(p => p.TemperatureK >= cold && p.TemperatureK <= warm).ToArray();
        return (inside.Length > 0 ? inside : rating.IsothermalEnthalpyDifference).MinBy(p => p.DifferenceJPerMol);
    }

    private LineChart Chart(bool phone)
    {
        var all = _rating.IsothermalEnthalpyDifference.Concat(_second?.IsothermalEnthalpyDifference ?? []).ToArray();
        return new()
        {
            Description = $"Isothermal enthalpy difference against temperature; smallest in the recuperator {_readout.Figures(_least.DifferenceJPerMol, 3)} J/mol at {_readout.Temperature(_least.TemperatureK)}.",
            X = Axis.Around($"temperature, {_readout.TemperatureSymbol}", all.Select(p => _readout.TemperatureValue(p.TemperatureK))),
            Y = new(phone ? "J/mol" : "isothermal enthalpy difference, J/mol", Math.Min(0, all.Min(p => p.DifferenceJPerMol)), all.Max(p => p.DifferenceJPerMol) * 1.04),
            Curves = [.. Curves(phone)],
            Uprights =
            [
                new(_readout.TemperatureValue(_rating.Recuperator.Min(s => s.LowStreamK)), Ink.Plain, phone ? ["cold end"] : ["recuperator's cold end"]),
                new(_readout.TemperatureValue(_rating.Recuperator.Max(s => s.HighStreamK)), Ink.Plain, phone ? ["warm end"] : ["recuperator's warm end"]),
            ],
            Marks = [new(_readout.TemperatureValue(_least.TemperatureK), _least.DifferenceJPerMol, Ink.Cooling, ["ceiling of cooling:", $"{_readout.Figures(_least.DifferenceJPerMol, 3)} J/mol"])],
        };
    }

    private IEnumerable<Curve> Curves(bool phone)
    {
        yield return Line(_rating, $"{_rating.Model} model", Ink.Cooling);
        if (_second is { IsothermalEnthalpyDifference.Count: > 1 } second)
            yield return Line(second, phone ? second.Model : $"second opinion: {second.Model} model", Ink.Second) with { Thin = true };
    }

    private Curve Line(ModelRating rating, string name, Ink ink) => new(name, ink,
        [.. rating.IsothermalEnthalpyDifference.Select(p => (_readout.TemperatureValue(p.TemperatureK), p.DifferenceJPerMol))],
        [.. rating.IsothermalEnthalpyDifference.Select(p => $"{_readout.TemperatureFull(p.TemperatureK)}: {_readout.Figures(p.DifferenceJPerMol, 4)} J/mol, {rating.Model} model")]);

    private static double? Near(IReadOnlyList<(double TemperatureK, double DifferenceJPerMol)> points, double temperatureK)
    {
        foreach (var p in points)
            if (Math.Abs(p.TemperatureK - temperatureK) < 1e-6 * temperatureK) return p.DifferenceJPerMol;
        return null;
    }
}
