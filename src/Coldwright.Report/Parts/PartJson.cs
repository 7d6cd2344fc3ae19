using System.Text.Json;
using Coldwright.Report.Safety;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Report.Parts;

/// <summary>
/// A part's rating as JSON, schema <c>coldwright/rate-part/1</c>: groups of figures by name (SI unit at the end of the name,
/// a word or null where there is no number), <c>bands</c> with low and high, and the data of every picture as <c>profiles</c>.
/// </summary>
public static class PartJson
{
    /// <summary>The whole document, ending with a line end.</summary>
    /// <param name="report">What was rated.</param>
    public static string Write(PartReport report) => Json.Text(w =>
    {
        var rating = report.Rating;
        FindingsJson.WriteHead(w, "coldwright/rate-part/1", report.Machine.Name, report.Findings);
        w.WriteString("part", rating.Part);
        w.WriteString("kind", rating.Kind);
        w.WriteString("method", rating.Method);
        w.WriteString("model", rating.FluidModel);
        w.Object("operating_point", () =>
        {
            w.WriteString("text", rating.Point.Text);
            w.Number("load_temperature_K", rating.Point.LoadTemperatureK);
            w.Number("high_pressure_Pa", rating.Point.HighPressurePa);
            w.Number("low_pressure_Pa", rating.Point.LowPressurePa);
            w.Number("molar_flow_mol_s", rating.Point.MolarFlow);
            w.Number("mass_flow_kg_s", rating.Point.MassFlow);
        });
        w.WriteString("verdict", rating.Verdict);
        foreach (var section in rating.Sections) w.Object(section.Id, () => Section(w, section));
        w.Objects("limits", rating.Limits, l =>
        {
            w.WriteString("what", l.What);
            w.Number("value", l.Value);
            w.Number("limit", l.Limit);
            w.WriteString("unit", l.Unit);
            w.WriteBoolean("broken", l.Broken);
            w.WriteString("reason", l.Reason.ToString());
        });
        w.Objects("balance", rating.Balances, b =>
        {
            w.WriteString("of", b.Name);
            w.Number("relative_error", b.Error);
        });
        w.Objects("profiles", rating.Pictures, p => Picture(w, p));
        w.Texts("sources", rating.Sources);
        w.Texts("warnings", rating.Warnings);
        w.WriteEndObject();
    });

    private static void Section(Utf8JsonWriter w, PartSection section)
    {
        foreach (var f in section.Figures)
            if (f.Value is null) w.WriteString(f.Id, f.Text);
            else w.NumberOrNull(f.Id, Finite(f.Value.Value));
        if (section.Figures.Any(f => f.Band is not null))
            w.Object("bands", () =>
            {
                foreach (var f in section.Figures)
                {
                    if (f.Band is not { } band) continue;
                    w.WriteStartArray(f.Id);
                    Value(w, Finite(band.Low));
                    Value(w, Finite(band.High));
                    w.WriteEndArray();
                }
            });
        if (section.Notes.Count > 0) w.Texts("notes", section.Notes);
    }

    private static void Picture(Utf8JsonWriter w, PartPicture picture)
    {
        w.WriteString("id", picture.Id);
        w.WriteString("title", picture.Title);
        if (picture is BarPicture bars)
        {
            w.WriteString("unit", bars.Axis.Unit);
            w.Objects("bars", bars.Bars, b =>
            {
                w.WriteString("name", b.Name);
                w.Number("value", b.Value);
                w.NumberOrNull("deviation", b.Deviation);
            });
        }
        if (picture is not LinePicture lines) return;
        w.Object("x", () => Axis(w, lines.X));
        w.Object("y", () => Axis(w, lines.Y));
        w.Objects("lines", lines.Lines, l =>
        {
            w.WriteString("id", l.Id);
            w.NumberOrNull("relative_band", l.RelativeBand);
            Numbers(w, "x", l.Points.Select(p => p.X));
            Numbers(w, "y", l.Points.Select(p => p.Y));
        });
        w.Objects("marks", lines.Marks, m =>
        {
            w.WriteString("name", m.Name);
            w.Number("x", m.X);
            w.Number("y", m.Y);
        });
        w.Objects("uprights", lines.Uprights, u =>
        {
            w.WriteString("name", u.Name);
            w.Number("x", u.X);
        });
        foreach (var (key, ranges) in new[] { ("above", lines.Above), ("below", lines.Below) })
            if (ranges is not null)
                w.Object(key, () =>
                {
                    w.WriteString("of", ranges.Name);
                    Numbers(w, "x", ranges.Places.Select(p => p.X));
                    w.Texts("names", ranges.Places.Select(p => p.Name));
                });
    }

    private static void Axis(Utf8JsonWriter w, PictureAxis axis)
    {
        w.WriteString("name", axis.Name);
        w.WriteString("unit", axis.Unit);
    }

    private static void Numbers(Utf8JsonWriter w, string name, IEnumerable<double> values)
    {
        w.WriteStartArray(name);
        foreach (var v in values) w.WriteNumberValue(v);
        w.WriteEndArray();
    }

    private static void Value(Utf8JsonWriter w, double? value)
    {
        if (value is { } v) w.WriteNumberValue(v);
        else w.WriteNullValue();
    }

    // never: a time without end is null here and said in words elsewhere; a value that is not a number is a defect
    private static double? Finite(double value) => double.IsNaN(value) ? throw new InvalidOperationException("a figure is not a number") : double.IsInfinity(value) ? null : value;
}
