using System.Text.Json;
using Coldwright.Report.Safety;

namespace Coldwright.Report.Cooldown;

/// <summary>A cooldown as JSON, schema <c>coldwright/cooldown/1</c>. SI, pressures absolute.</summary>
public static class CooldownJson
{
    /// <summary>The whole document, ending with a line end.</summary>
    /// <param name="report">What was followed.</param>
    public static string Write(CooldownReport report) => Json.Text(w =>
    {
        var r = report.Result;
        FindingsJson.WriteHead(w, "coldwright/cooldown/1", report.Machine.Name, report.Findings);
        w.WriteString("model", r.Model);
        w.WriteBoolean("warm_up", r.IsWarmUp);
        w.WriteBoolean("stopped", r.Stopped);
        w.NumberOrNull("plateau_K", r.HasPlateau ? r.PlateauK : null);
        w.Number("end_K", r.EndK);
        w.Number("end_rate_K_h", r.EndRateKPerH);
        w.NumberOrNull("condensing_K", r.CondensingK);
        w.Objects("time_to_K", r.TimeToK, t =>
        {
            w.Number("temperature_K", t.TemperatureK);
            w.NumberOrNull("s", t.TimeS);
            w.WriteString("what", t.What);
        });
        w.Map("stopped_by", r.StoppedBy.Select(t => (t.Id, t.Share)));
        w.Map("stopped_by_W", r.StoppedBy.Select(t => (t.Id, t.Watts)));
        w.WriteString("sentence", r.Sentence.ToString());
        w.Objects("changes", r.Changes, c =>
        {
            w.WriteString("id", c.Id);
            w.WriteString("what", c.What);
            w.Number("plateau_change_K", c.PlateauChangeK);
            w.Number("reference_K", c.ReferenceK);
            w.NumberOrNull("time_before_s", c.TimeBeforeS);
            w.NumberOrNull("time_after_s", c.TimeAfterS);
        });
        w.Objects("sensitivities", r.Sensitivities, s =>
        {
            w.WriteString("id", s.Id);
            w.WriteString("name", s.Name);
            w.Number("end_K", s.EndKPerUnit);
            w.NumberOrNull("time_s", s.TimeSPerUnit);
        });
        w.Objects("masses", r.Masses, m =>
        {
            w.WriteString("name", m.Name);
            w.Number("mass_kg", m.MassKg);
            w.Number("heat_J", m.HeatJ);
        });
        w.Objects("events", r.Events, e =>
        {
            w.Number("time_s", e.TimeS);
            w.WriteString("what", e.Text.ToString());
        });
        w.Object("series", () => Series(w, r.Series));
        w.Map("circulating", r.Circulating.Names.Zip(r.Circulating.MoleFractions));
        w.Number("energy_error", r.EnergyError);
        w.Number("largest_drift", r.LargestDrift);
        if (r.DirectResidual is { } residual) w.Number("direct_residual", residual);
        w.Texts("warnings", r.Warnings);
        w.WriteEndObject();
    });

    private static void Series(Utf8JsonWriter w, Simulation.Cooldown.CooldownSeries s)
    {
        foreach (var (name, values) in new (string, IReadOnlyList<double>)[]
        {
            ("time_s", s.TimeS), ("temperature_K", s.TemperatureK), ("high_pressure_Pa", s.HighPressurePa), ("low_pressure_Pa", s.LowPressurePa), ("stored_heat_W", s.StoredHeatW), ("leak_W", s.LeakW),
            ("load_W", s.LoadW), ("power_W", s.PowerW), ("cooling_W", s.CoolingW), ("recuperator_metal_W", s.RecuperatorW), ("load_mass_W", s.LoadMassW), ("insulation_W", s.InsulationW),
            ("molar_flow_mol_s", s.MolarFlow), ("throttle_inlet_K", s.ThrottleInletK), ("precooled_K", s.PrecooledK),
        })
        {
            w.WriteStartArray(name);
            foreach (var v in values)
            {
                if (!double.IsFinite(v)) throw new InvalidOperationException($"{name} holds {v}: a result must be a finite number");
                w.WriteNumberValue(v);
            }
            w.WriteEndArray();
        }
    }
}
