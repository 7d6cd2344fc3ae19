using Coldwright.Report.Html;
using Coldwright.Report.Rating;

namespace Coldwright.Report.Envelopes;

/// <summary>An envelope as one self-contained page that needs no network and no script.</summary>
public static class EnvelopePage
{
    /// <summary>Usual file name.</summary>
    public const string FileName = "envelope.html";

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">The envelope.</param>
    public static string Write(EnvelopeReport report)
    {
        var readout = report.Readout(typographic: true);
        var html = new HtmlText();
        html.Inside("header", "", h =>
        {
            h.Element("h1", "Phase envelope");
            h.Element("p", $"{report.Mixture}, by mole. {RatingHeadline.Capital(report.Main.Model)} model{(report.Second is { } s ? $", {s.Model} model beside it" : "")}.");
        });
        html.Inside("div", "tiles", h =>
        {
            foreach (var f in EnvelopeWords.Figures(report, readout))
                h.Inside("div", "tile", t => t.Element("span", f.Name, "name").Element("span", f.Value, "value").Element("span", f.Second == "" ? f.Note : $"{f.Note}{(f.Note == "" ? "" : "; ")}{report.Second!.Model}: {f.Second}", "note"));
        });
        var picture = new EnvelopePicture(report, readout);
        html.Section("What the mixture is, where", h => Page.Figure(h, picture.Draw, picture.Caption, picture.Table));
        html.Section("Where it begins to boil and where it is all vapour", h => Saturation(h, report, readout));
        foreach (var model in report.Envelopes.Where(m => m.AllNotes.Any()))
            html.Section(report.Second is null ? "What to keep in mind" : $"What to keep in mind: {model.Model} model", h => h.List(model.AllNotes.Select(n => RatingHeadline.Capital(report.Say(n, readout)) + ".")));
        html.Section("Where the numbers come from", h => h.List(report.Envelopes.Select(e => RatingHeadline.Capital(ModelSources.Of(e.Model))).Append(
            "Every point of a line was found between two states whose phases are certified: no other phase would lower the Gibbs energy. Lines are placed to about 2 mK and 0.01 % of the pressure of the model; the model itself is less exact than that.")));
        return Page.Write($"Phase envelope: {report.Mixture}", html);
    }

    private static void Saturation(HtmlText html, EnvelopeReport report, Readout readout)
    {
        string Cell(double? t) => t is { } k ? readout.TemperatureFull(k) : "none";
        html.Element("p", "The bubble temperature is where the first vapour appears on heating, the dew temperature where the first drop appears on cooling.");
        html.Table([">pressure", .. report.Envelopes.SelectMany(e => new[] { $">bubble, {e.Model}", $">dew, {e.Model}" })],
            report.TablePressuresPa.Select(p => (IReadOnlyList<string>)[readout.PressureFull(p), .. report.Envelopes.SelectMany(e => new[] { Cell(e.Envelope.BubbleTemperatureK(p)), Cell(e.Envelope.DewTemperatureK(p)) })]));
    }
}
