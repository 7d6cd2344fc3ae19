using System.Text.Json;
using Coldwright.Report.Safety;
using Coldwright.Runs.Next;

namespace Coldwright.Report.Next;

/// <summary>The next change as JSON.</summary>
public static class NextJson
{
    /// <summary>The document.</summary>
    /// <param name="report">What was ranked.</param>
    public static string Write(NextReport report) => Json.Text(w =>
    {
        FindingsJson.WriteHead(w, "coldwright/next/1", report.Machine.Name, report.Findings);
        w.WriteString("run", report.Run);
        w.Texts("named", report.Result.Named);
        w.Object("now", () => Change(w, report.Result.Now));
        w.Objects("changes", report.Result.Changes, c => Change(w, c));
        w.Texts("warnings", report.Result.Said);
        w.WriteEndObject();
    });

    private static void Change(Utf8JsonWriter w, NextChange c)
    {
        w.WriteString("id", c.Id);
        w.WriteString("what", c.What);
        w.Number("litres_per_hour", c.LitresPerHour);
        w.WriteStartArray("interval_90");
        w.WriteNumberValue(c.Low);
        w.WriteNumberValue(c.High);
        w.WriteEndArray();
        w.Number("end_K", c.EndK);
        w.NumberOrNull("kWh_L", c.EnergyKWhPerL);
        w.WriteNull("cost");
    }
}
