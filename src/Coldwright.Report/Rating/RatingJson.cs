using System.Text.Json;
using Coldwright.Report.Rating.Closed;
using Coldwright.Report.Safety;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>A rating as JSON, schema <c>coldwright/rate/1</c>. SI; <c>cooling_W</c> is what is left for a load (net).</summary>
public static class RatingJson
{
    /// <summary>The whole document, ending with a line end.</summary>
    /// <param name="report">What was rated and found.</param>
    public static string Write(RatingReport report) => Json.Text(w =>
    {
        var rating = report.Main;
        FindingsJson.WriteHead(w, "coldwright/rate/1", report.Machine.Name, report.Findings);
        Headline(w, rating);
        w.Objects("cooling_curve", rating.CoolingCurve, p =>
        {
            w.Number("temperature_K", p.TemperatureK);
            w.Number("cooling_W", p.NetCoolingW);
            w.Number("gross_W", p.GrossCoolingW);
            w.Number("heat_leak_W", p.HeatLeakW);
            w.Number("warm_end_difference_K", p.WarmEndDifferenceK);
            w.Number("pinch_K", p.PinchK);
            w.Number("pinch_temperature_K", p.PinchTemperatureK);
        });
        w.Object("loop", () => Loop(w, rating.Loop));
        ClosedJson.Write(w, rating);
        w.Map("heat_leak_W", rating.HeatLeakW.Select(p => (p.Key, p.Value)));
        w.Object("exergy", () =>
        {
            w.Number("input_W", rating.Exergy.InputW);
            w.Number("feed_W", rating.Exergy.FeedW);
            w.Number("product_W", rating.Exergy.ProductW);
            w.Map("losses_W", ExergyPicture.Sorted(rating.Exergy));
        });
        w.Object("balance", () =>
        {
            w.Number("mass", rating.Balance.Mass);
            w.Number("energy", rating.Balance.Energy);
            w.Number("exergy", rating.Balance.Exergy);
        });
        w.Objects("limits", rating.Limits, l =>
        {
            w.WriteString("what", l.What);
            w.WriteString("part", l.Part);
            w.Number("value", l.Value);
            w.Number("limit", l.Limit);
            w.WriteString("unit", l.Unit);
            w.WriteBoolean("broken", l.Broken);
        });
        if (report.Result.SecondOpinion is { } second)
            w.Object("second_opinion", () =>
            {
                Headline(w, second);
                w.Number("high_pressure_Pa", second.Loop.HighPressurePa);
                w.Number("low_pressure_Pa", second.Loop.LowPressurePa);
                w.Number("mass_flow_kg_s", second.Loop.MassFlow);
                w.Texts("warnings", second.Warnings);
            });
        else w.WriteNull("second_opinion");
        w.Texts("warnings", report.Warnings);
        w.WriteEndObject();
    });

    // The headline figures, the same for both models.
    private static void Headline(Utf8JsonWriter w, ModelRating rating)
    {
        w.WriteString("model", rating.Model);
        w.NumberOrNull("no_load_temperature_K", rating.NoLoadTemperatureK);
        w.Number("throttle_outlet_K", rating.ThrottleOutletK);
        w.Number("operating_temperature_K", rating.OperatingTemperatureK);
        w.Object("limited_by", () =>
        {
            w.WriteString("kind", rating.LimitedBy.Kind.ToString().ToLowerInvariant());
            w.WriteString("sentence", rating.LimitedBy.Sentence.ToString());
            w.NumberOrNull("pinch_temperature_K", rating.LimitedBy.PinchTemperatureK);
            w.WriteString("pinch_phases", rating.LimitedBy.PinchPhases);
        });
        w.Object("power", () =>
        {
            w.Number("main_W", rating.Power.MainW);
            w.Number("precool_W", rating.Power.PrecoolW);
            w.Number("feed_W", rating.Power.FeedW);
            w.Number("fans_W", rating.Power.FansW);
            w.Number("total_W", rating.Power.TotalW);
        });
        if (rating.Liquid is { } liquid) w.Object("liquid", () => Liquid(w, liquid));
        else w.WriteNull("liquid");
        w.NumberOrNull("energy_kWh_L", rating.EnergyKWhPerL);
        if (rating.CostPerL is { } cost)
            w.Object("cost_per_L", () =>
            {
                w.WriteString("currency", cost.Currency);
                w.Number("electricity", cost.Electricity);
                w.Number("gas", cost.Gas);
                w.Number("charge", cost.Charge);
                w.Number("total", cost.Total);
            });
        else w.WriteNull("cost_per_L");
        w.Number("carnot_fraction", rating.CarnotFraction);
    }

    private static void Liquid(Utf8JsonWriter w, LiquidResult liquid)
    {
        w.WriteString("substance", liquid.Substance);
        w.Number("condensing_pressure_Pa", liquid.CondensingPressurePa);
        w.NumberOrNull("condensing_temperature_K", liquid.CondensingTemperatureK);
        w.Number("liquid_temperature_K", liquid.LiquidTemperatureK);
        w.Number("rate_kg_s", liquid.RateKgPerS);
        w.Number("rate_L_h", liquid.RateLPerH);
        w.Number("collected_L_h", liquid.CollectedLPerH);
        w.Number("flash_fraction", liquid.FlashFraction);
        w.Number("heat_per_kg_J", liquid.HeatPerKgJ);
    }

    private static void Loop(Utf8JsonWriter w, LoopState loop)
    {
        w.Number("high_pressure_Pa", loop.HighPressurePa);
        w.Number("low_pressure_Pa", loop.LowPressurePa);
        w.Number("molar_flow_mol_s", loop.MolarFlow);
        w.Number("mass_flow_kg_s", loop.MassFlow);
        w.Number("discharge_temperature_K", loop.DischargeTemperatureK);
        w.Number("precooling_W", loop.PrecoolingW);
        w.Number("recuperator_duty_W", loop.RecuperatorDutyW);
        w.Map("composition", loop.Composition.Names.Zip(loop.Composition.MoleFractions));
        w.Objects("points", loop.Points, p =>
        {
            w.WriteString("name", p.Name);
            w.WriteString("part", p.Part);
            w.Number("temperature_K", p.TemperatureK);
            w.Number("pressure_Pa", p.PressurePa);
            w.Number("molar_enthalpy_J_mol", p.MolarEnthalpy);
            w.Number("molar_entropy_J_molK", p.MolarEntropy);
            w.Number("vapour_fraction", p.VapourFraction);
            w.WriteString("phases", p.Phases);
        });
    }
}
