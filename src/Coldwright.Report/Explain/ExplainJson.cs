using Coldwright.Report.Safety;

namespace Coldwright.Report.Explain;

/// <summary>An explained run as JSON.</summary>
public static class ExplainJson
{
    /// <summary>The document.</summary>
    /// <param name="report">What was explained.</param>
    public static string Write(ExplainReport report) => Json.Text(w =>
    {
        var e = report.Result;
        FindingsJson.WriteHead(w, "coldwright/explain/1", report.Machine.Name, report.Findings);
        w.WriteString("run", report.Run);
        w.Objects("phases", e.Phases, p =>
        {
            w.WriteString("kind", p.Kind);
            w.Number("from_s", p.FromS);
            w.Number("to_s", p.ToS);
        });
        w.Objects("causes", e.Causes, c =>
        {
            w.WriteString("id", c.Id);
            w.WriteString("name", c.Name);
            w.WriteString("detail", c.Detail);
            w.Number("value", c.Value);
            w.WriteString("unit", c.Unit);
            w.WriteStartArray("interval_90");
            w.WriteNumberValue(c.Low);
            w.WriteNumberValue(c.High);
            w.WriteEndArray();
            w.WriteNumber("rank", c.Rank);
            w.WriteBoolean("named", c.Named);
            w.Number("probability", c.Probability);
            w.Number("share_of_shortfall", c.ShareOfShortfall);
        });
        w.WriteStartArray("indistinguishable");
        foreach (var group in e.Indistinguishable)
        {
            w.WriteStartArray();
            foreach (string id in group) w.WriteStringValue(id);
            w.WriteEndArray();
        }
        w.WriteEndArray();
        w.Objects("tests", e.Tests, t =>
        {
            w.WriteString("id", t.Id);
            w.WriteString("what", t.What);
            w.Number("settles", t.Settles);
        });
        w.Map("watts", e.Watts.Select(t => (t.Id, t.Watts)));
        w.Map("kilojoules", e.PullDownHeat.Select(t => (t.Id, t.Joules / 1000)));
        w.Map("grams", e.Grams.Select(g => (g.Name, 1000 * g.Kg)));
        w.Number("misfit", e.Misfit);
        w.Object("end", () =>
        {
            w.Number("measured_K", e.End.MeasuredK);
            w.Number("described_K", e.End.DescribedK);
        });
        w.Objects("figures", e.Figures, f =>
        {
            w.WriteString("id", f.Feature.Id);
            w.WriteBoolean("is_ln", f.Feature.IsLog);
            w.Number("measured", f.Measured);
            w.Number("described", f.Described);
            w.Number("fitted", f.Fitted);
            w.Number("uncertainty", f.Uncertainty);
        });
        w.Objects("correlations", e.Correlations, c =>
        {
            w.WriteString("a", c.A);
            w.WriteString("b", c.B);
            w.Number("correlation", c.Correlation);
        });
        w.WriteString("paragraph", e.Paragraph.ToString());
        w.Texts("warnings", e.Said);
        w.WriteEndObject();
    });
}
