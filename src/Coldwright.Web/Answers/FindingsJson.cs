using Coldwright.Web.Http;
using System.Text.Json;
using Coldwright.Report;
using Coldwright.Report.Views;
using Coldwright.Safety;

namespace Coldwright.Web.Answers;

/// <summary>Safety findings for the page: the line that never leaves and all of them behind it.</summary>
internal static class FindingsJson
{
    /// <summary>Writes one member of an open object.</summary>
    public static void Write(Utf8JsonWriter w, IReadOnlyList<Finding> findings, UnitSystem units, double roomPressurePa)
    {
        var (danger, serious, caution) = FindingsView.Count(findings);
        w.WriteStartObject("findings");
        w.WriteNumber("danger", danger);
        w.WriteNumber("serious", serious);
        w.WriteNumber("caution", caution);
        w.WriteStartArray("brief");
        foreach (var text in FindingsView.Brief(findings)) w.WriteStringValue(text);
        w.WriteEndArray();
        w.WriteLong("html", FindingsView.Write(findings, units, roomPressurePa));
        w.WriteEndObject();
    }
}
