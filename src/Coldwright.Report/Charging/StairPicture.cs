using Coldwright.Design.Charging;
using Coldwright.Report.Charts;
using Coldwright.Report.Html;

namespace Coldwright.Report.Charging;

/// <summary>The gauge step by step.</summary>
internal sealed class StairPicture(ChargeReport report, Readout readout)
{
    private const double PascalPerPsi = 6894.757293168;

    public string Caption => "What the gauge shows before and after each gas, everything at the room's temperature. Let the gas stand until it has that temperature: a kelvin warmer reads a third of a per cent more. A step told by the scale is drawn in the second colour.";

    public string Draw(ChartSize size) => new BarChart
    {
        Description = $"Gauge pressure after each of {report.Result.Recipe.Steps.Count} steps.",
        AxisLabel = readout.Units == UnitSystem.Us ? "gauge, psig" : "gauge, bar",
        Bars = [.. report.Result.Recipe.Steps.Select((s, i) => new Bar($"{i + 1} {s.Gas}", Value(s.FromPa), Value(s.UntilPa), s.By == FillingMeasure.Pressure ? Ink.High : Ink.Second, ChargeWords.Gauge(readout, s.UntilPa))),
            new("at rest", Value(0), Value(report.Result.Recipe.StandstillPa), Ink.Plain, ChargeWords.Gauge(readout, report.Result.Recipe.StandstillPa), true)],
    }.Draw(size);

    public void Table(HtmlText html) => html.Table(["gas", ">grams", ">gauge before", ">gauge after", "tell it by", ">scale alone is good to", ">gauge alone is good to", ">bottle", ">liquid"],
        report.Result.Recipe.Steps.Select(s => new[]
        {
            s.Gas, ChargeWords.Grams(readout, s.MassKg), ChargeWords.Gauge(readout, s.FromPa), ChargeWords.Gauge(readout, s.UntilPa), ChargeWords.By(readout, s), ChargeWords.Grams(readout, s.ByScaleKg), s.ByGaugeKg is { } g ? ChargeWords.Grams(readout, g) : "nothing",
            s.BottlePa is { } b ? ChargeWords.Gauge(readout, b) : "as it was filled", readout.Percent(s.LiquidShare),
        }));

    private double Value(double pa) => (pa - report.Machine.Room.PressurePa) / (readout.Units == UnitSystem.Us ? PascalPerPsi : 1e5);
}
