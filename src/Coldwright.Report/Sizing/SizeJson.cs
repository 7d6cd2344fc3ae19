using System.Text.Json;
using Coldwright.Design.Sizing;
using Coldwright.Report.Safety;

namespace Coldwright.Report.Sizing;

/// <summary>Sizes as JSON, schema <c>coldwright/size/1</c>; every figure in the SI unit at the end of its name.</summary>
public static class SizeJson
{
    /// <summary>The whole document, ending with a line end.</summary>
    /// <param name="report">The sizes.</param>
    public static string Write(SizeReport report) => Json.Text(w =>
    {
        var r = report.Result;
        FindingsJson.WriteHead(w, "coldwright/size/1", report.Machine.Name, report.Findings);
        w.WriteString("part", r.Part);
        w.WriteString("kind", r.Kind);
        w.WriteString("method", r.Method);
        w.Object("target", () =>
        {
            w.Number(r.Target.Id, r.Target.Value!.Value);
            w.WriteString("text", r.TargetRemark.ToString());
        });
        w.WriteBoolean("stopped", r.Stopped);
        w.WriteString("currency", report.Currency);
        if (r.Best is { } best) w.Object("best", () => Option(w, best));
        else w.WriteNull("best");
        w.Objects("options", r.Options, o => Option(w, o));
        w.Texts("sources", r.Sources);
        w.Texts("warnings", report.Warnings);
        w.WriteEndObject();
    });

    private static void Option(Utf8JsonWriter w, SizeOption o)
    {
        w.WriteString("stock", o.Stock);
        w.WriteBoolean("fits", o.Fits);
        w.WriteString("why_not", o.WhyNot.ToString());
        foreach (var f in o.Figures)
            if (f.Value is { } value) w.Number(f.Id, value);
            else w.WriteString(f.Id, f.Text);
        w.NumberOrNull("cost", o.Cost);
        w.Objects("cut", o.Cut, c =>
        {
            w.WriteString("what", c.What);
            w.Number("amount", c.Amount);
            w.WriteString("unit", c.Unit);
            w.NumberOrNull("cost", c.Cost);
        });
        w.Object("keys", () =>
        {
            foreach (var (key, text) in o.Keys) w.WriteString(key, text);
        });
    }
}
