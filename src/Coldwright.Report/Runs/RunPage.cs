using Coldwright.Report.Html;
using Coldwright.Report.Safety;
using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;

namespace Coldwright.Report.Runs;

/// <summary>An imported run as one self-contained page that needs no network and no script.</summary>
public static class RunPage
{
    /// <summary>File name: <c>run-NAME.html</c>, whatever is no letter, digit, hyphen or underscore turned into a hyphen.</summary>
    /// <param name="name">Name of the run's folder.</param>
    public static string FileName(string name) => $"run-{string.Concat(name.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '-'))}.html";

    /// <summary>The page's text (UTF-8, LF).</summary>
    /// <param name="report">What was imported.</param>
    public static string Write(RunReport report)
    {
        var (record, units, html) = (report.Record, new RunUnits(report, typographic: true), new HtmlText());
        html.Inside("header", "", h => h.Element("h1", report.Title).Element("p", RunWords.Extent(report, units)).Element("p", RunWords.Log(record)));
        FindingsHtml.GraveFirst(html, report.Findings, units.Readout);
        if (RunWords.Verdict(report, units) is { Length: > 0 } verdict) html.Element("p", verdict, report.IsNo ? "verdict short" : "verdict");
        Tiles(html, report, units);
        if (report.Answer.Leak is { } leak)
        {
            html.Section("The leak", h =>
            {
                h.Table(["", ">value", ""], RunWords.Leak(leak, units).Select(r => new[] { r.Name, r.Value, r.Note }));
                var picture = new AmountPicture(leak, units);
                Page.Figure(h, picture.Draw, AmountPicture.Caption, picture.Table);
                h.Folded("What makes it uncertain", f => f.Table(["cause", ">mol/s, one standard deviation"], leak.Parts.Select(p => new[] { p.Name, p.MolS.ToString("0.0e-0", System.Globalization.CultureInfo.InvariantCulture) })));
            });
            if (leak.Charge.Count > 0) html.Section("What it means for the charge", h =>
            {
                h.Table(RunWords.ChargeHeadings(record.Test!.ChargeShift), RunWords.ChargeRows(leak, units));
                h.Element("p", "How gas finds its way through a leak is not known, so these are bounds. Through a pore finer than the free path every gas goes by itself, the light ones faster (molecular). Through a wider one the mixture goes as it is (viscous, orifice): pressure is lost, composition is not. Where liquid stands before the leak, what leaves is the liquid or the vapour there.", "quiet");
            });
        }
        if (report.Answer.Proof is { } proof) html.Section("The proof test", h => h.Table(["", ">value", ""], RunWords.Proof(proof, units).Select(r => new[] { r.Name, r.Value, r.Note })));
        var drawn = Enum.GetValues<Measured>().Where(m => new RunPicture(report, m, units, false).HasSomething).ToArray();
        foreach (var picture in drawn.Select((m, i) => new RunPicture(report, m, units, namesEvents: i == 0)))
            html.Section(picture.Title, h => Page.Figure(h, picture.Draw, picture.Caption, picture.Table));
        html.Section("Channels", h => Channels(h, record, units));
        if (record.Log is not null) html.Section("What was found in the log", h => Faults(h, record, units));
        if (record.Events.Count > 0) html.Section("Events", h => h.Table([">when", "what"], record.Events.Select(e => new[] { units.Moment(e.TimeS), RunWords.Event(e, units) })));
        var notes = RunWords.Notes(report).Select(units.Readout.Say).ToArray();
        if (notes.Length > 0) html.Section("What was assumed", h => h.List(notes));
        html.Inside("footer", "", h => h.Element("p", "Thermocouples by NIST Monograph 175 (ITS-90), platinum thermometers by IEC 60751:2008. A limit of error counts as evenly spread, so its standard deviation is the limit over the square root of 3 (JCGM 100:2008)."));
        return Page.Write(report.Title, html);
    }

    private static void Tiles(HtmlText html, RunReport report, RunUnits units) => html.Inside("div", "tiles", h =>
    {
        var record = report.Record;
        Tile("Lasted", RunUnits.Duration(record.LastS - record.FirstS), record.Start is { Year: > 2000 } start ? $"from {start.AddSeconds(record.FirstS):yyyy-MM-dd HH:mm}" : "");
        foreach (var c in record.Channels.Where(c => record.Kind == RunKind.Run && c.Measured == Measured.Temperature && c.GoodCount > 0).OrderBy(c => c.Lowest).Take(1))
            Tile($"Coldest: {c.Name}", units.Readout.Temperature(c.Lowest), $"{units.Readout.TemperatureBeside(c.Lowest)}, ± {units.Spread(Measured.Temperature, SensorUncertainty.Combine(c.AtLowest))}, at {units.Moment(c.TimesS[c.LowestIndex])}");
        long samples = record.Channels.Sum(c => (long)c.Count), good = record.Channels.Sum(c => (long)c.GoodCount);
        if (samples > 0) Tile("Samples that can be used", $"{(good == samples ? "all" : units.Readout.Figures(100.0 * good / samples, 4) + " %")}", $"{samples} in {RunWords.Count(record.Channels.Count, "channel")}");
        var weighed = record.Events.Where(e => e.MassKg is not null).ToArray();
        if (weighed.Length > 0) Tile("Weighed", units.Readout.Figures(weighed.Sum(e => e.MassKg!.Value) * 1e3, 4) + " g", $"in {RunWords.Count(weighed.Length, "weighing")}");

        void Tile(string name, string value, string note) => h.Inside("div", "tile", t => t.Element("span", name, "name").Element("span", value, "value").Element("span", note, "note"));
    });

    private static void Channels(HtmlText h, RunRecord record, RunUnits units)
    {
        h.Table(["channel", "where", "sensor", ">lowest", ">highest", ">good"], record.Channels.Select(c =>
        {
            var (low, high) = RunWords.Uncertainty(c, units);
            var any = c.GoodCount > 0;
            return new[]
            {
                c.Name, c.Place.ToString(), $"{RunWords.Sensor(c.Sensor)}\n{(c.Column.Length > 0 ? $"column {c.Column}" : "by hand")}",
                any ? $"{units.Value(c.Measured, c.Lowest)}\n± {low}" : "none", any ? $"{units.Value(c.Measured, c.Highest)}\n± {high}" : "none", $"{c.GoodCount}\nof {c.Count}",
            };
        }));
        h.Element("p", "± is one standard deviation of a single reading.", "quiet");
        h.Folded("What the uncertainty is made of, at the lowest value of each channel", f => f.Table(["channel", "part", ">one standard deviation", "from"],
            record.Channels.Where(c => c.GoodCount > 0).SelectMany(c => c.AtLowest.Select((p, i) => new[] { i == 0 ? c.Name : "", p.Name, units.Spread(c.Measured, p.Standard), units.Readout.Say(p.Source) }))));
    }

    private static void Faults(HtmlText h, RunRecord record, RunUnits units)
    {
        if (record.Faults.Count == 0) h.Element("p", "Nothing wrong was found.");
        else h.Table([">when", "what", ">line"], record.Faults.Select(f => new[] { RunWords.When(f, units), f.Text, f.Line > 0 ? f.Line.ToString(System.Globalization.CultureInfo.InvariantCulture) : "" }));
        h.Element("p", "The log itself is never changed.", "quiet");
    }
}
