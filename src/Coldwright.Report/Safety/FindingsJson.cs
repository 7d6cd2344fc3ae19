using System.Text.Json;
using Coldwright.Safety;

namespace Coldwright.Report.Safety;

/// <summary>Findings as JSON: <c>[{id, grade, part, value, limit, unit, rule, source, consequence, do}]</c>.</summary>
public static class FindingsJson
{
    /// <summary>Writes the array under the key <c>findings</c> of the object that is open.</summary>
    /// <param name="writer">Inside an object.</param>
    /// <param name="findings">Findings, gravest first.</param>
    public static void WriteProperty(Utf8JsonWriter writer, IEnumerable<Finding> findings) => writer.Objects("findings", findings, f =>
    {
        writer.WriteString("id", f.Id);
        writer.WriteString("grade", GradeWords.Of(f.Grade));
        writer.WriteString("part", f.Part);
        writer.NumberOrNull("value", f.Value);
        writer.NumberOrNull("limit", f.Limit);
        writer.WriteString("unit", f.Unit);
        writer.WriteString("rule", f.Rule);
        writer.WriteString("source", f.Source);
        writer.WriteString("consequence", f.Consequence);
        writer.WriteString("do", f.Do);
    });

    /// <summary>Opens a document's object: schema, machine, findings.</summary>
    /// <param name="writer">At the document's start.</param>
    /// <param name="schema">Name of its schema.</param>
    /// <param name="machine">Name of the machine; null when it could not be read.</param>
    /// <param name="findings">Findings, gravest first.</param>
    internal static void WriteHead(Utf8JsonWriter writer, string schema, string? machine, IEnumerable<Finding> findings)
    {
        writer.WriteStartObject();
        writer.WriteString("schema", schema);
        writer.WriteString("machine", machine);
        WriteProperty(writer, findings);
    }

    /// <summary>The document of <c>safety</c>: schema, machine, findings, warnings.</summary>
    /// <param name="report">What was found.</param>
    public static string Write(SafetyReport report) => Json.Text(writer =>
    {
        WriteHead(writer, "coldwright/safety/1", report.Machine.Name, report.Review.Findings);
        writer.Texts("warnings", report.Review.Warnings);
        writer.WriteEndObject();
    });
}
