using System.Text.Json;
using Coldwright.Report.Safety;
using Coldwright.Simulation.Batch;

namespace Coldwright.Report.Batch;

/// <summary>A batch as JSON, schema <c>coldwright/batch/1</c>. Grams where the name ends in _g, else SI; the entries of <c>ledger_J</c> sum to nothing.</summary>
public static class BatchJson
{
    /// <summary>The whole document, ending with a line end.</summary>
    /// <param name="report">What was simulated and found.</param>
    public static string Write(BatchReport report) => Json.Text(w =>
    {
        var (result, run) = (report.Result, report.Run);
        FindingsJson.WriteHead(w, "coldwright/batch/1", report.Machine.Name, report.Findings);
        w.WriteString("substance", result.Substance);
        Figures(w, run);
        w.WriteBoolean("stopped", result.Stopped);
        w.Object("ledger_g", () =>
        {
            w.Number("fed", 1e3 * run.Grams.FedKg);
            w.Number("lines", 1e3 * run.Grams.LinesKg);
            w.Number("vapour_left", 1e3 * run.Grams.VapourLeftKg);
            w.Number("flashed", 1e3 * run.Grams.FlashedKg);
            w.Number("line_boil", 1e3 * run.Grams.LineBoilKg);
            w.Number("flask_boil", 1e3 * run.Grams.FlaskBoilKg);
            w.Number("collected", 1e3 * run.Grams.CollectedKg);
        });
        w.Object("ledger_details_g", () =>
        {
            w.Number("vapour_blown", 1e3 * run.Details.VapourBlownKg);
            w.Number("liquid_left", 1e3 * run.Details.LiquidLeftKg);
            w.Number("seat_leak", 1e3 * run.Details.SeatLeakKg);
            w.Number("discharged", 1e3 * run.Details.DischargedKg);
            w.Number("most_liquid", 1e3 * run.Details.CondensedKg);
        });
        w.Map("ledger_J", run.Joules.Entries);
        w.Object("balance", () =>
        {
            w.Number("mass", run.Grams.Error);
            w.Number("energy", run.Joules.Error);
        });
        w.Objects("schedule", run.Schedule, s =>
        {
            w.Number("start_s", s.StartS);
            w.WriteString("action", s.Action);
            w.WriteString("until", s.Until);
            w.Number("end_s", s.EndS);
        });
        Plan(w, "plan", run.Plan);
        w.WriteString("chosen_for", result.Goal switch { BatchGoal.LitresPerHour => "litres_per_hour", BatchGoal.EnergyPerLitre => "energy_per_litre", _ => "given" });
        w.WriteNumber("schedules_tried", result.Tried);
        if (result.OtherGoal is { } other)
            w.Object("other_goal", () =>
            {
                Figures(w, other);
                Plan(w, "plan", other.Plan);
            });
        else w.WriteNull("other_goal");
        w.Objects("waiting", result.Waiting, p =>
        {
            w.Number("wait_s", p.WaitS);
            w.Number("opening_pressure_Pa", p.OpeningPressurePa);
            w.Number("collected_g", 1e3 * p.CollectedKg);
            w.Number("collected_L_h", p.CollectedLPerH);
            w.NumberOrNull("energy_kWh_L", p.EnergyKWhPerL);
            w.Number("gain_g_min", 1e3 * p.GainKgPerMinute);
        });
        Feed(w, result.Feed);
        Impurities(w, result.Impurities);
        w.Objects("coil_by_level", result.Coil?.Levels.Zip(result.Coil.Conductances) ?? [], c =>
        {
            w.Number("level", c.First);
            w.Number("conductance_W_K", c.Second);
        });
        Series(w, run.Series);
        w.Texts("warnings", report.Warnings);
        w.WriteEndObject();
    });

    private static void Figures(Utf8JsonWriter w, BatchRun run)
    {
        w.Number("duration_s", run.DurationS);
        w.Number("collected_L_h", run.CollectedLPerH);
        w.NumberOrNull("energy_kWh_L", run.EnergyKWhPerL);
        w.Number("loop_J", run.LoopJ);
        w.Number("feed_J", run.FeedJ);
        w.Number("flask_loss_g_h", 3.6e6 * run.FlaskLossKgPerS);
    }

    private static void Plan(Utf8JsonWriter w, string name, BatchPlan plan) => w.Object(name, () =>
    {
        w.Number("feed_pressure_Pa", plan.FeedPressurePa);
        w.Number("fill_share", plan.FillShare);
        w.Number("opening_pressure_Pa", plan.OpeningPressurePa);
    });

    private static void Feed(Utf8JsonWriter w, FeedDuty? duty)
    {
        if (duty is null)
        {
            w.WriteNull("feed_compressor");
            return;
        }
        w.Object("feed_compressor", () =>
        {
            w.Number("flow_kg_s", duty.FlowKgPerS);
            w.Number("volumetric_efficiency", duty.VolumetricEfficiency);
            w.Number("steady_shell_K", duty.SteadyShellK);
            w.Number("allowed_shell_K", duty.AllowedShellK);
            w.Number("discharge_K", duty.DischargeK);
            w.Number("allowed_discharge_K", duty.AllowedDischargeK);
            w.Number("duty", duty.DutyShare);
            w.NumberOrNull("run_s", duty.RunS);
            w.NumberOrNull("rest_s", duty.RestS);
        });
    }

    private static void Impurities(Utf8JsonWriter w, ImpurityResult i) => w.Object("impurities", () =>
    {
        w.Map("feed", i.Feed.Names.Zip(i.Feed.MoleFractions));
        w.NumberOrNull("glide_K", i.GlideK);
        if (i.VapourThatStays is { } vapour) w.Map("vapour_that_stays", i.Feed.Names.Zip(vapour));
        else w.WriteNull("vapour_that_stays");
        w.Map("collected", i.Feed.Names.Zip(i.Collected));
        w.NumberOrNull("oxygen_tenth_left", i.Oxygen?.TenthLeft);
        w.Objects("traces", i.Traces, t =>
        {
            w.WriteString("name", t.Name);
            w.Number("fed_g", 1e3 * t.FedKg);
            w.Number("frozen_g", 1e3 * t.FrozenKg);
            w.NumberOrNull("freezes_at_K", t.FreezesAtK);
        });
    });

    private static void Series(Utf8JsonWriter w, IReadOnlyList<BatchMoment> series) => w.Object("series", () =>
    {
        void Column(string name, Func<BatchMoment, double> value)
        {
            w.WriteStartArray(name);
            foreach (var m in series) w.WriteNumberValue(value(m));
            w.WriteEndArray();
        }
        Column("time_s", m => m.TimeS);
        Column("pressure_Pa", m => m.PressurePa);
        Column("temperature_K", m => m.TemperatureK);
        Column("level", m => m.Level);
        Column("vessel_g", m => 1e3 * m.VesselKg);
        Column("supply_Pa", m => m.SupplyPa);
        Column("shell_K", m => m.ShellK);
        Column("line_K", m => m.LineK);
        Column("flask_g", m => 1e3 * m.FlaskKg);
        Column("cooling_W", m => m.CoolingW);
    });
}
