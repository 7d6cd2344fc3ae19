using System.Text.Json;
using Coldwright.Fluids.Envelopes;
using Coldwright.Report.Safety;

namespace Coldwright.Report.Envelopes;

/// <summary>An envelope as JSON, schema <c>coldwright/envelope/1</c>; the second model under <c>second_opinion</c>.</summary>
public static class EnvelopeJson
{
    /// <summary>The whole document, ending with a line end.</summary>
    /// <param name="report">The envelope.</param>
    public static string Write(EnvelopeReport report) => Json.Text(w =>
    {
        w.WriteStartObject();
        w.WriteString("schema", "coldwright/envelope/1");
        w.Map("mixture", report.Mixture.Names.Zip(report.Mixture.MoleFractions));
        Envelope(w, report.Main);
        if (report.Second is { } second)
            w.Object("second_opinion", () =>
            {
                Envelope(w, second);
                w.Texts("warnings", second.AllNotes.Select(n => n.ToString()));
            });
        w.Texts("warnings", report.Main.AllNotes.Select(n => n.ToString()));
        FindingsJson.WriteProperty(w, []);
        w.WriteEndObject();
    });

    private static void Envelope(Utf8JsonWriter w, ModelEnvelope model)
    {
        var envelope = model.Envelope;
        w.WriteString("model", model.Model);
        w.Objects("lines", envelope.Lines, line =>
        {
            w.WriteString("kind", EnvelopeWords.Key(line.Kind));
            w.WriteString("between", line.Between);
            Numbers(w, "temperature_K", line.Points.Select(p => p.TemperatureK));
            Numbers(w, "pressure_Pa", line.Points.Select(p => p.PressurePa));
        });
        w.Objects("critical_points", envelope.CriticalPoints, c =>
        {
            Point(w, new(c.TemperatureK, c.PressurePa));
            w.Number("density_mol_m3", c.MolarDensity);
            w.WriteBoolean("stable", c.Stable);
        });
        PointOrNull(w, "cricondenbar", envelope.HighestPressure);
        PointOrNull(w, "cricondentherm", envelope.HighestTemperature);
        if (envelope.ThreePhaseRange is { } range)
            w.Object("three_phase_range", () =>
            {
                w.Number("lowest_temperature_K", range.ColdestK);
                w.Number("highest_temperature_K", range.WarmestK);
                w.Number("lowest_pressure_Pa", range.LowestPa);
                w.Number("highest_pressure_Pa", range.HighestPa);
            });
        else w.WriteNull("three_phase_range");
        w.Object("window", () =>
        {
            w.Number("lowest_temperature_K", envelope.Window.ColdestK!.Value);
            w.Number("highest_temperature_K", envelope.Window.WarmestK!.Value);
            w.Number("lowest_pressure_Pa", envelope.Window.LowestPa);
            w.Number("highest_pressure_Pa", envelope.Window.HighestPa);
        });
    }

    private static void PointOrNull(Utf8JsonWriter w, string name, BoundaryPoint? point)
    {
        if (point is { } p) w.Object(name, () => Point(w, p));
        else w.WriteNull(name);
    }

    private static void Point(Utf8JsonWriter w, BoundaryPoint p)
    {
        w.Number("temperature_K", p.TemperatureK);
        w.Number("pressure_Pa", p.PressurePa);
    }

    private static void Numbers(Utf8JsonWriter w, string name, IEnumerable<double> values)
    {
        w.WriteStartArray(name);
        // a boundary is placed to about 2 mK and 0.007 %: more figures would be noise
        foreach (double value in values) w.WriteNumberValue(double.Parse(value.ToString("G8", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture));
        w.WriteEndArray();
    }
}
