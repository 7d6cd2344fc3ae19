using Coldwright.Fluids.Envelopes;
using Coldwright.Report.Charts;
using Coldwright.Report.Html;

namespace Coldwright.Report.Envelopes;

/// <summary>The envelope as a picture: temperature to the right, pressure upwards on a scale of equal ratios.</summary>
internal sealed class EnvelopePicture(EnvelopeReport report, Readout readout)
{
    public string Caption
    {
        get
        {
            var lines = report.Main.Envelope.Lines;
            bool Has(BoundaryKind kind) => lines.Any(l => l.Kind == kind);
            var text = new List<string>
            {
                "A map of what the mixture is made of at every temperature and pressure. Go from left to right along one pressure, and the cold liquid is warmed: at the bubble line the first vapour appears, at the dew line the last drop is gone. " + Glide(),
            };
            if (report.Main.Envelope.CriticalPoints.Any(c => c.Stable)) text.Add("At the critical point the two lines meet and liquid and vapour are the same thing.");
            if (Has(BoundaryKind.ThreePhase) || Has(BoundaryKind.LiquidLiquid)) text.Add("At low temperatures the liquid parts in two, as oil and water do.");
            if (Has(BoundaryKind.ThreePhase)) text.Add(report.Mixture.Names.Count == 2 ? "On the three-phase line vapour and both liquids exist together." : "Between the three-phase lines vapour and both liquids exist together.");
            if (Has(BoundaryKind.Freezing)) text.Add("To the left of the freezing line the named substance would settle as ice and can block a tube; what is drawn there holds only as long as nothing freezes.");
            text.Add("The pressure scale is by ratios: every step from 1 to 2 or from 10 to 20 has the same height.");
            if (report.Second is { } second) text.Add($"Thin broken lines are the {second.Model} model's answer.");
            return string.Join(" ", text);
        }
    }

    // how far bubble and dew line lie apart in the middle of the table's pressures
    private string Glide()
    {
        var spans = report.TablePressuresPa.Select(p => report.Main.Envelope.DewTemperatureK(p) - report.Main.Envelope.BubbleTemperatureK(p)).OfType<double>().Order().ToArray();
        if (spans.Length == 0) return "Between the two it boils.";
        var span = spans[spans.Length / 2];
        return span < 2
            ? $"Here the two lie only about {readout.Difference(Math.Max(span, 0.01))} apart: the mixture boils almost like a pure substance."
            : $"Between the two it boils over a whole range of temperatures, here about {readout.Fixed(readout.DifferenceValue(span), 0)} {readout.TemperatureSymbol} wide, not at one: that is what these coolers live on.";
    }

    public string Draw(ChartSize size) => new EnvelopeDrawing(report, readout, size.IsPhone ? size : size with { Height = 520 }).Draw();

    public void Table(HtmlText html)
    {
        foreach (var model in report.Envelopes)
            foreach (var line in model.Envelope.Lines)
            {
                html.Element("p", $"{EnvelopeWords.Name(line)} ({model.Model} model), between {EnvelopeWords.Between(line).Replace(" from ", " and ")}", "quiet");
                // every third point reads as well
                var every = Math.Max(1, line.Points.Count / 24);
                html.Table([">temperature", ">pressure"], line.Points.Where((_, i) => i % every == 0 || i == line.Points.Count - 1)
                    .Select(p => new[] { readout.TemperatureFull(p.TemperatureK), readout.PressureFull(p.PressurePa) }));
            }
    }
}
