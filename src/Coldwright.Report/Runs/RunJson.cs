using System.Text.Json;
using Coldwright.Report.Safety;
using Coldwright.Runs.Record;
using Coldwright.Runs.Sensors;
using Coldwright.Runs.Tightness;

namespace Coldwright.Report.Runs;

/// <summary>An imported run as JSON: <c>coldwright/import/1</c>.</summary>
public static class RunJson
{
    /// <summary>The document's text.</summary>
    /// <param name="report">What was imported.</param>
    public static string Write(RunReport report) => Json.Text(w =>
    {
        var record = report.Record;
        FindingsJson.WriteHead(w, "coldwright/import/1", record.Machine?.Name, report.Findings);
        w.WriteString("name", record.Name);
        w.WriteString("kind", record.Kind switch { RunKind.LeakTest => "leak-test", RunKind.ProofTest => "proof-test", _ => "run" });
        if (record.Start is { Year: > 2000 } start) w.WriteString("start", start.ToString("yyyy-MM-ddTHH:mm:ss.fff", System.Globalization.CultureInfo.InvariantCulture));
        else w.WriteNull("start");
        w.Number("from_s", record.FirstS);
        w.Number("to_s", record.LastS);
        w.Number("room_pressure_Pa", record.RoomPressurePa);
        w.Number("room_pressure_uncertainty_Pa", record.RoomPressureUncertaintyPa);
        w.Number("room_temperature_K", record.RoomTemperatureK);
        if (record.Log is { } log) w.Object("log", () => Log(w, log));
        else w.WriteNull("log");
        w.Objects("channels", record.Channels, c => Channel(w, c));
        w.Objects("faults", record.Faults, f =>
        {
            w.WriteString("kind", Word(f.Kind));
            w.WriteString("channel", f.Channel);
            w.Number("from_s", f.FromS);
            w.Number("to_s", f.ToS);
            w.WriteNumber("count", f.Count);
            w.WriteNumber("line", f.Line);
            w.WriteString("text", f.Text);
        });
        w.Objects("events", record.Events, e =>
        {
            w.Number("time_s", e.TimeS);
            w.WriteString("what", e.Word);
            w.WriteString("at", e.At);
            w.NumberOrNull("mass_kg", e.MassKg);
            w.NumberOrNull("mass_uncertainty_kg", e.MassUncertaintyKg);
            w.WriteString("note", e.Note);
        });
        if (report.Answer.Leak is { } leak) w.Object("leak_test", () => Leak(w, leak));
        if (report.Answer.Proof is { } proof) w.Object("proof_test", () => Proof(w, proof));
        if (report.Answer.Complaint.Length > 0) w.WriteString("test_complaint", report.Answer.Complaint);
        w.Texts("warnings", RunWords.Notes(report));
        w.WriteEndObject();
    });

    private static void Log(Utf8JsonWriter w, LogSummary log)
    {
        w.WriteString("file", log.File);
        w.WriteNumber("bytes", log.Bytes);
        w.WriteNumber("rows", log.Rows);
        w.WriteNumber("columns", log.Columns);
        w.WriteString("delimiter", log.Delimiter);
        w.WriteString("decimal", log.Decimal);
        w.WriteString("time_form", log.TimeForm);
        w.Number("step_s", log.StepS);
        w.Texts("unused_columns", log.Unused);
    }

    private static void Channel(Utf8JsonWriter w, RunChannel c)
    {
        w.WriteString("name", c.Name);
        w.WriteString("at", c.Place.Port);
        w.WriteString("end", c.Place.End.ToString().ToLowerInvariant());
        w.WriteString("sensor", c.Sensor.Kind.Word);
        w.WriteString("measures", c.Measured switch { Measured.MassFlow => "mass_flow", var m => m.ToString().ToLowerInvariant() });
        w.WriteString("unit", c.Sensor.Kind.Quantity.SiUnit);
        w.WriteString("column", c.Column);
        w.WriteNumber("samples", c.Count);
        w.WriteNumber("good", c.GoodCount);
        if (c.GoodCount == 0) return;
        w.Number("lowest", c.Lowest);
        w.Number("highest", c.Highest);
        w.Number("noise", c.Noise);
        Parts("uncertainty_at_lowest", c.AtLowest);
        Parts("uncertainty_at_highest", c.AtHighest);

        void Parts(string name, IReadOnlyList<UncertaintyPart> parts) => w.Object(name, () =>
        {
            w.Number("standard", SensorUncertainty.Combine(parts));
            w.Objects("parts", parts, p =>
            {
                w.WriteString("name", p.Name);
                w.Number("standard", p.Standard);
                w.WriteBoolean("common", p.IsCommon);
                w.WriteString("source", p.Source.ToString());
            });
        });
    }

    private static void Leak(Utf8JsonWriter w, LeakTestResult leak)
    {
        w.WriteString("verdict", Word(leak.Verdict));
        w.WriteString("gas", leak.Gas);
        w.Number("duration_s", leak.DurationS);
        w.Number("mean_pressure_Pa", leak.MeanPressurePa);
        w.Number("change_as_read_Pa", leak.ChangeAsReadPa);
        w.Number("change_corrected_Pa", leak.ChangeCorrectedPa);
        w.Number("temperature_change_K", leak.TemperatureChangeK);
        w.Number("leak_mol_s", leak.LeakMolS);
        w.Number("leak_uncertainty_mol_s", leak.UncertaintyMolS);
        w.Number("leak_upper_95_mol_s", leak.UpperLimitMolS);
        w.Number("leak_Pa_m3_s", leak.LeakPaM3S);
        w.Number("leak_kg_year", leak.LeakKgPerYear);
        w.WriteBoolean("seen", leak.IsSeen);
        w.NumberOrNull("allowed_kg_year", leak.AllowedKgPerYear);
        w.NumberOrNull("needed_s", leak.NeededS);
        w.Map("uncertainty_mol_s", leak.Parts);
        w.Objects("charge", leak.Charge, c =>
        {
            w.WriteString("flow", c.Flow);
            w.Number("loss_kg_year", c.KgPerYear);
            w.Number("loss_upper_95_kg_year", c.UpperKgPerYear);
            w.NumberOrNull("tenth_lost_s", c.TenthLostS);
            w.NumberOrNull("tenth_lost_earliest_s", c.TenthLostUpperS);
            w.NumberOrNull("shifted_s", c.ShiftS);
            w.NumberOrNull("shifted_earliest_s", c.ShiftUpperS);
            w.WriteString("first", c.First);
            w.Number("first_relative", c.FirstRelative);
        });
    }

    private static void Proof(Utf8JsonWriter w, ProofTestResult proof)
    {
        w.WriteString("verdict", Word(proof.Verdict));
        w.WriteString("reason", proof.Reason.ToString());
        w.WriteString("medium", proof.Medium);
        w.Number("proof_pressure_Pa", proof.ProofPressurePa);
        w.Number("highest_Pa", proof.HighestPa);
        w.Number("gauge_uncertainty_Pa", proof.GaugePa);
        w.Number("held_s", proof.HeldS);
        w.Number("hold_s", proof.HoldS);
        w.Number("drop_as_read_Pa", proof.DropAsReadPa);
        w.Number("drop_corrected_Pa", proof.DropPa);
        w.Number("drop_uncertainty_Pa", proof.UncertaintyPa);
        w.Number("allowed_drop_Pa", proof.AllowedDropPa);
        w.Number("temperature_change_K", proof.TemperatureChangeK);
    }

    private static string Word(Enum value) => string.Concat(value.ToString().Select((c, i) => char.IsUpper(c) ? (i > 0 ? "_" : "") + char.ToLowerInvariant(c) : c.ToString()));
}
