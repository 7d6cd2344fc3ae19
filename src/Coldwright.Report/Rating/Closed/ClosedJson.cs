using System.Text.Json;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating.Closed;

/// <summary>The parts <c>closed</c> and <c>sensitivity</c> of a rating's JSON. SI.</summary>
internal static class ClosedJson
{
    /// <summary>Both; null for a rating between given pressures, or without sensitivities.</summary>
    public static void Write(Utf8JsonWriter w, ModelRating rating)
    {
        if (rating.Closed is { } closed) w.Object("closed", () => Loop(w, closed));
        else w.WriteNull("closed");
        if (rating.Closed?.Sensitivity is { } sensitivity) w.Object("sensitivity", () => Sensitivity(w, sensitivity));
        else w.WriteNull("sensitivity");
    }

    private static void Loop(Utf8JsonWriter w, ClosedLoopResult closed)
    {
        w.WriteString("held", closed.Held.ToString().ToLowerInvariant());
        w.Number("charge_kg", closed.ChargeKg);
        w.WriteBoolean("charge_is_answer", closed.ChargeIsAnswer);
        w.NumberOrNull("throttle_length_m", closed.ThrottleLengthM);
        w.NumberOrNull("throttle_opening", closed.ThrottleOpening);
        w.Number("charge_error", closed.ChargeError);
        w.Number("loop_error", closed.LoopError);
        w.Map("charged", closed.Charged.Names.Zip(closed.Charged.MoleFractions));
        w.Objects("contents", closed.Contents, c =>
        {
            w.WriteString("place", c.Place);
            w.Number("kg", c.Kg);
            w.Number("liquid_share", c.LiquidShare);
            w.Number("liquid_kg", c.LiquidKg);
        });
        w.Number("liquid_share", closed.LiquidShare);
        w.WriteBoolean("throttle_choked", closed.ThrottleChoked);
        w.NumberOrNull("precooler_evaporating_K", closed.PrecoolerEvaporatingK);
        w.NumberOrNull("precooler_run_share", closed.PrecoolerRunShare);
        w.Number("recuperator_inlet_K", closed.RecuperatorInletK);
        if (closed.Buffer is { } buffer)
            w.Object("buffer", () =>
            {
                w.Number("pressure_Pa", buffer.PressurePa);
                w.Number("opening", buffer.Opening);
                w.Number("bypass_share", buffer.BypassShare);
            });
        else w.WriteNull("buffer");
        w.Number("coil_difference_K", closed.CoilDifferenceK);
        w.Object("start_up", () => StartUp(w, closed.StartUp));
    }

    private static void StartUp(Utf8JsonWriter w, StartUpResult start)
    {
        w.Number("standstill_pressure_Pa", start.StandstillPressurePa);
        w.Number("standstill_liquid_share", start.StandstillLiquidShare);
        w.NumberOrNull("read_standstill_pressure_Pa", start.ReadStandstillPa);
        w.WriteString("motor", start.Motor);
        w.Number("highest_standstill_pressure_Pa", start.HighestStandstillPa);
        w.NumberOrNull("first_high_pressure_Pa", start.FirstHighPa);
        w.NumberOrNull("first_low_pressure_Pa", start.FirstLowPa);
        w.NumberOrNull("first_discharge_temperature_K", start.FirstDischargeK);
        w.NumberOrNull("allowed_high_pressure_Pa", start.AllowedHighPa);
        w.NumberOrNull("buffer_needed_m3", start.BufferNeededM3);
        w.NumberOrNull("first_charge_kg", start.FirstChargeKg);
        w.WriteString("sentence", start.Sentence.ToString());
    }

    private static void Sensitivity(Utf8JsonWriter w, SensitivityResult result)
    {
        w.Objects("figures", result.Figures, f =>
        {
            w.WriteString("id", f.Id);
            w.Number("value", f.Value);
            w.Number("deviation", f.Deviation);
            w.WriteString("unit", f.Unit);
        });
        w.Objects("inputs", result.Inputs, i =>
        {
            w.WriteString("id", i.Id);
            w.WriteString("name", i.Name);
            w.WriteString("unit", i.Unit);
            w.Number("value", i.Value);
            w.Number("step", i.Step);
            w.WriteBoolean("doubt", i.IsDoubt);
            // A figure that has no slope by this input says null rather than nothing.
            w.Object("slopes", () =>
            {
                for (var k = 0; k < result.Figures.Count; k++) w.NumberOrNull(result.Figures[k].Id, double.IsFinite(i.Slopes[k]) ? i.Slopes[k] : null);
            });
        });
    }
}
