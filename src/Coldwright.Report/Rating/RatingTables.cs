using Coldwright.Fluids.IdealGas;
using Coldwright.Report.Html;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>The tables after the pictures.</summary>
internal sealed class RatingTables(RatingReport report, Readout readout)
{
    private readonly ModelRating _rating = report.Main;

    public void Loop(HtmlText html)
    {
        var loop = _rating.Loop;
        html.Element("p", $"Round the loop in the direction of flow: {readout.Figures(loop.MolarFlow, 3)} mol/s ({readout.Figures(loop.MassFlow * 1e3, 3)} g/s) of {loop.Composition} (mole fractions). " +
            $"The compressor discharges at {readout.TemperatureFull(loop.DischargeTemperatureK)}; the recuperator passes {readout.Watts(loop.RecuperatorDutyW)}" +
            (loop.PrecoolingW > 0 ? $", the precooler takes {readout.Watts(loop.PrecoolingW)}." : "."));
        html.Table(["state", "part", ">temperature", ">pressure", ">enthalpy\nJ/mol", ">entropy\nJ/(mol K)", ">vapour\nmol/mol", "phases"], loop.Points.Select(p => new[]
        {
            p.Name, p.Part, $"{readout.Temperature(p.TemperatureK)}\n{readout.TemperatureBeside(p.TemperatureK)}", $"{readout.Pressure(p.PressurePa)}\n{readout.PressureBeside(p.PressurePa)}", readout.Fixed(p.MolarEnthalpy, 1), readout.Fixed(p.MolarEntropy, 2),
            readout.Fixed(p.VapourFraction, 3), RecuperatorPicture.Phases(p.Phases),
        }));
        html.Element("p", $"Caloric zero: {CaloricZero.Text}.", "quiet");
    }

    public void Power(HtmlText html) => html.Table(["electrical power", ">"],
    [
        ["main compressor", readout.Watts(_rating.Power.MainW)], ["precooler", readout.Watts(_rating.Power.PrecoolW)], ["feed compressor", readout.Watts(_rating.Power.FeedW)],
        ["fans", readout.Watts(_rating.Power.FansW)], ["total", readout.Watts(_rating.Power.TotalW)],
    ]);

    public void Leak(HtmlText html)
    {
        var total = _rating.HeatLeakW.Values.Sum();
        html.Table([$"heat leak at {readout.Temperature(_rating.OperatingTemperatureK)}, by path", ">", ">share"], _rating.HeatLeakW.OrderByDescending(p => p.Value)
            .Select(p => new[] { p.Key, readout.Watts(p.Value), readout.Percent(total > 0 ? p.Value / total : 0) }).Append(["total", readout.Watts(total), ""]));
    }

    public void Liquid(HtmlText html)
    {
        if (_rating.Liquid is not { } liquid) return;
        // what would leave the vessel, and at which temperature, is no figure when nothing does
        bool made = liquid.RateKgPerS > 0;
        html.Table([$"{liquid.Substance}", ">"],
        [
            ["pressure in the vessel", readout.PressureFull(liquid.CondensingPressurePa)],
            ["condenses at", liquid.CondensingTemperatureK is { } t ? readout.TemperatureFull(t) : "no condensing temperature: above the critical pressure"],
            .. made ? [
                ["liquid leaves the vessel at", readout.TemperatureFull(liquid.LiquidTemperatureK)],
                ["heat taken from the feed at the vessel", $"{readout.Figures(liquid.HeatPerKgJ / 1e3, 4)} kJ/kg"],
                ["condensed in the vessel", $"{readout.Figures(liquid.RateLPerH, 3)} L/h ({readout.Figures(liquid.RateKgPerS * 3600, 3)} kg/h)"],
                ["flashes off when let down to the flask", readout.Percent(liquid.FlashFraction)],
                ["collected in the flask", $"{readout.Figures(liquid.CollectedLPerH, 3)} L/h"],
            ] : (string[][])[["condensed in the vessel", "nothing: the cold end is too warm"]],
        ]);
        if (_rating.CostPerL is { } cost)
            html.Table(["cost of a collected litre", $">{cost.Currency}"],
            [
                ["electricity", readout.Fixed(cost.Electricity, 3)], ["feed gas", readout.Fixed(cost.Gas, 3)], ["charge lost", readout.Fixed(cost.Charge, 3)], ["total", readout.Fixed(cost.Total, 3)],
            ]);
    }

    public void Limits(HtmlText html)
    {
        if (_rating.Limits.Count == 0) html.Element("p", "The description gives no limits of parts.");
        else
            html.Table(["limit", "part", ">at the operating point", ">allowed", "verdict"], _rating.Limits.OrderByDescending(l => l.Broken).Select(l => new[]
            {
                l.What, l.Part, readout.Any(l.Value, l.Unit, l.What), readout.Any(l.Limit, l.Unit, l.What), l.Broken ? "BROKEN" : "kept",
            }));
    }

    public void Balances(HtmlText html) => html.Table(["balance", ">relative error", "relative to"],
    [
        ["mass", readout.Error(_rating.Balance.Mass), "the circulating flow"],
        ["energy", readout.Error(_rating.Balance.Energy), "the main compressor's power"],
        ["exergy", readout.Error(_rating.Balance.Exergy), "the electrical input"],
        .. _rating.Closed is { } closed
            ? new IReadOnlyList<string>[] { ["pressures, flows and heats round the loop, the worst", readout.Error(closed.LoopError), "the value, or 1 kJ/mol"], ["charge of each substance, the worst", readout.Error(closed.ChargeError), "the amount let in"], ["throttle's own model at the answer (its march resolves 3e-4)", readout.Error(closed.ThrottleError), "the flow"] }
            : [],
    ]);

    public void SecondOpinion(HtmlText html)
    {
        if (report.Result.SecondOpinion is not { } second) return;
        html.Element("p", RatingHeadline.Spread(report, readout)!);
        var rows = RatingHeadline.Figures(report, readout).Select(f => new[] { f.Name, f.Value, f.Second }).ToList();
        void Row(string name, Func<ModelRating, string> value) => rows.Add([name, value(_rating), value(second)]);
        if (_rating.Closed is not null)
        {
            Row("High pressure", r => readout.Pressure(r.Loop.HighPressurePa));
            Row("Low pressure", r => readout.Pressure(r.Loop.LowPressurePa));
        }
        Row("Throttle outlet", r => readout.Temperature(r.ThrottleOutletK));
        Row("Discharge temperature", r => readout.Temperature(r.Loop.DischargeTemperatureK));
        Row("Circulating flow", r => $"{readout.Figures(r.Loop.MolarFlow, 3)} mol/s");
        if (_rating.Recuperator.Count > 0 && second.Recuperator.Count > 0) Row("Pinch in the recuperator", r => readout.Difference(r.Recuperator.Min(s => s.HighStreamK - s.LowStreamK)));
        if (EnthalpyDifferencePicture.Has(_rating) && EnthalpyDifferencePicture.Has(second))
            Row("Least isothermal enthalpy difference", r => $"{readout.Figures(EnthalpyDifferencePicture.Least(r).DifferenceJPerMol, 3)} J/mol");
        html.Table(["", $">{_rating.Model}", $">{second.Model}"], rows);
        html.Element("p", $"The {second.Model} model's verdict: {readout.Say(second.LimitedBy.Sentence)}");
    }
}
