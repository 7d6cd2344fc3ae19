using Coldwright.Fluids.IdealGas;
using Coldwright.Report.Html;
using Coldwright.Report.Loops;
using Coldwright.Report.Parts;
using Coldwright.Report.Rating.Closed;
using Coldwright.Report.Safety;
using Coldwright.Safety;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>A rating as one self-contained page that needs no network and no script.</summary>
public static class RatingPage
{
    /// <summary>Usual file name.</summary>
    public const string FileName = "rating.html";

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">What was rated and found.</param>
    public static string Write(RatingReport report)
    {
        var readout = report.Readout(typographic: true);
        var html = new HtmlText();
        Head(html, report, readout);
        FindingsHtml.GraveFirst(html, report.Findings, readout);
        Answer(html, report, readout);
        RatingLoop.Write(html, report, readout);
        var closed = report.Main.Closed is { } c ? new ClosedPage(report, c, readout) : null;
        closed?.Write(html);
        Background(html, report, readout);
        Pictures(html, report, readout);
        closed?.Sensitivities(html);
        if (report.Parts is { } parts) PartsOverview.Write(html, parts, new PartUnits(readout, report.Machine.Room.PressurePa), pressuresFollow: report.Main.Closed is not null);
        Rest(html, report, readout);
        html.Inside("footer", "", h => h.Element("p", $"{RatingHeadline.Capital(Cautions.LocalCodes.Rule)}. {RatingHeadline.Capital(Cautions.LocalCodes.Do)}."));
        return Page.Write($"{report.Machine.Name}: rating", html);
    }

    private static void Head(HtmlText html, RatingReport report, Readout readout)
    {
        var (main, operation) = (report.Main, report.Main.Loop);
        html.Inside("header", "", h =>
        {
            h.Element("h1", report.Machine.Name);
            var room = $"Room {readout.TemperatureFull(report.Machine.Room.TemperatureK)}.";
            h.Element("p", main.Closed is { } closed
                ? $"Steady rating from hardware and charge by the {main.Model} model. Charge: {new ClosedWords(report, closed, readout).Grams(closed.ChargeKg)} of {closed.Charged}. {room}"
                : $"Steady rating between given pressures by the {main.Model} model. Charge: {operation.Composition}. " +
                  $"Pressures {readout.PressureFull(operation.HighPressurePa)} and {readout.PressureFull(operation.LowPressurePa)}. {room}");
        });
    }

    internal static void Answer(HtmlText html, RatingReport report, Readout readout)
    {
        var main = report.Main;
        html.Element("p", readout.Say(main.LimitedBy.Sentence), main.LimitedBy.Kind == LimitationKind.Works ? "verdict" : "verdict short");
        html.Inside("div", "tiles", h =>
        {
            foreach (var figure in RatingHeadline.Figures(report, readout))
                h.Inside("div", "tile", t => Tile(t, figure));
        });
        if (RatingHeadline.Doubt(report, readout) is { } doubt) html.Element("p", doubt);
        if (RatingHeadline.Spread(report, readout) is { } spread) html.Element("p", spread);
        var broken = main.Limits.Where(l => l.Broken).ToArray();
        if (broken.Length > 0)
            html.List(broken.Select(l => $"Limit broken: {l.What} of {l.Part} is {readout.Any(l.Value, l.Unit, l.What)}, allowed {readout.Any(l.Limit, l.Unit, l.What)}."));
    }

    private static void Tile(HtmlText html, HeadlineNumber figure)
    {
        var band = figure.Band == "" ? "" : $" <small>{Markup.Escape(figure.Band)}</small>";
        html.Element("span", figure.Name, "name").Raw($"<span class=\"value\">{Markup.Escape(figure.Value)}{band}</span>").Element("span", figure.Note, "note");
    }

    internal static void Background(HtmlText html, RatingReport report, Readout readout)
    {
        if (report.Warnings.Count > 0)
            html.Inside("section", "", h => h.Element("h2", "What to keep in mind").List(report.Warnings.Select(readout.Say)));
        html.Folded("New to this kind of cooler? How it works in five sentences", h => h.Element("p",
            "A compressor pumps a mixture of gases round a closed loop, and the room takes its heat away. " +
            "In the recuperator, a long double tube, the gas on its way to the cold end is cooled by the gas coming back from there. " +
            "At the cold end it passes a narrow throttle, loses pressure and becomes a little colder still. " +
            "That little is handed back through the recuperator again and again, until the heat that leaks in from the room uses it all up: this is the no-load temperature. " +
            "Whatever cooling is left above it can turn a feed gas into liquid."));
    }

    internal static void Pictures(HtmlText html, RatingReport report, Readout readout)
    {
        if (report.Main.CoolingCurve.Count > 1)
        {
            var cooling = new CoolingPicture(report, readout);
            html.Section("How cold, and how much cooling is left", h => Page.Figure(h, cooling.Draw, cooling.Caption, cooling.Table));
        }
        if (report.Main.Recuperator.Count > 1)
        {
            var recuperator = new RecuperatorPicture(report.Main, readout);
            html.Section("Inside the recuperator", h => Page.Figure(h, recuperator.Draw, recuperator.Caption, recuperator.Table));
        }
        if (EnthalpyDifferencePicture.Has(report.Main))
        {
            var difference = new EnthalpyDifferencePicture(report, readout);
            html.Section("What the mixture can give", h => Page.Figure(h, difference.Draw, difference.Caption, difference.Table));
        }
        var exergy = new ExergyPicture(report, readout);
        html.Section("Where the watts go", h => Page.Figure(h, exergy.Draw, exergy.Caption, exergy.Table));
    }

    internal static void Rest(HtmlText html, RatingReport report, Readout readout)
    {
        var tables = new RatingTables(report, readout);
        if (report.Result.SecondOpinion is not null) html.Section("Second opinion", tables.SecondOpinion);
        if (report.Main.Liquid is not null) html.Section("The liquid", tables.Liquid);
        html.Section("Round the loop", tables.Loop);
        html.Section("Power and heat leak", h =>
        {
            tables.Power(h);
            tables.Leak(h);
        });
        html.Section("Limits of the parts", tables.Limits);
        var cautions = report.FindingsAt(Grade.Caution).ToArray();
        if (cautions.Length > 0) html.Section("Cautions", h => FindingsHtml.Write(h, cautions, readout));
        html.Section("How far the numbers close, and where they come from", h =>
        {
            tables.Balances(h);
            h.List(new[] { ModelSources.Of(report.Main.Model), report.Result.SecondOpinion is { } second ? ModelSources.Of(second.Model) : "", $"Caloric zero: {CaloricZero.Text}.",
                "Per litre means per litre collected in the flask, at its normal boiling point. Exergy is counted against the room's temperature and pressure." }.Where(t => t != ""));
        });
    }
}
