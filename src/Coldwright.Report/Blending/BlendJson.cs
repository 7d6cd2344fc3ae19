using System.Text.Json;
using Coldwright.Design.Blending;
using Coldwright.Report.Safety;

namespace Coldwright.Report.Blending;

/// <summary>Mixtures as JSON, schema <c>coldwright/blend/1</c>. A merit is W of net cooling, L/h of liquid collected, minus K of the temperature without load, or J/mol, as <c>goal</c> says.</summary>
public static class BlendJson
{
    /// <summary>The whole document, ending with a line end.</summary>
    /// <param name="report">The mixtures.</param>
    public static string Write(BlendReport report) => Json.Text(w =>
    {
        var r = report.Result;
        FindingsJson.WriteHead(w, "coldwright/blend/1", report.Machine.Name, report.Findings);
        w.WriteString("goal", r.Goal switch { BlendGoal.Cooling => "cooling_W", BlendGoal.Litres => "collected_L_h", BlendGoal.Lowest => "minus_no_load_K", _ => "difference_J_mol" });
        w.Number("temperature_K", r.TemperatureK);
        w.Number("high_pressure_Pa", r.HighPressurePa);
        w.Number("low_pressure_Pa", r.LowPressurePa);
        w.Number("filling_error", r.FillingError);
        w.Texts("gases", r.Gases);
        w.WriteBoolean("stopped", r.Stopped);
        w.Object("best", () => Choice(w, r.Best));
        if (r.KnowsNow) w.Object("now", () => Choice(w, r.Now));
        else w.WriteNull("now");
        w.Objects("near", r.Near, c => Choice(w, c));
        w.Objects("limits_price", r.Prices, p =>
        {
            w.WriteString("limit", p.Limit);
            w.Number("value", p.Value);
            w.NumberOrNull("relaxed", p.Relaxed);
            w.WriteString("unit", p.Unit);
            w.Number("gain", p.Gain);
        });
        w.Objects("sensitivities", r.Sensitivities, s =>
        {
            w.WriteString("gas", s.Gas);
            w.Number("fraction", s.Fraction);
            w.NumberOrNull("one_percent_more", s.MorePerCent);
            w.NumberOrNull("one_percent_less", s.LessPerCent);
            w.NumberOrNull("best_without", s.WithoutMerit);
        });
        w.Object("effort", () =>
        {
            w.WriteNumber("cubic_ratings", r.Rated.Cubic);
            w.WriteNumber("reference_ratings", r.Rated.Reference);
            w.Number("seconds", r.Seconds);
            w.Number("processor_seconds", r.ProcessorSeconds);
            w.Number("ratings_per_second", (r.Rated.Cubic + r.Rated.Reference) / Math.Max(r.Seconds, 1e-3));
        });
        w.Texts("warnings", report.Warnings);
        w.WriteEndObject();
    });

    private static void Choice(Utf8JsonWriter w, BlendChoice c)
    {
        w.Map("mixture", c.Mixture.Names.Zip(c.Mixture.MoleFractions));
        w.Object("figures", () =>
        {
            w.Number("merit", c.Main.Merit);
            w.Number("worst_merit", c.WorstMerit);
            Point(w, c.Main);
            w.Number("flammable_share", c.Flammable);
            w.NumberOrNull("price_per_kg", c.PricePerKg);
        });
        if (c.Reference is null) w.WriteNull("second_opinion");
        else
            w.Object("second_opinion", () =>
            {
                w.WriteString("model", "cubic");
                w.Number("merit", c.Cubic.Merit);
                Point(w, c.Cubic);
            });
    }

    private static void Point(Utf8JsonWriter w, BlendPoint p)
    {
        w.NumberOrNull("cooling_W", Finite(p.CoolingW));
        w.NumberOrNull("collected_L_h", p.CollectedLPerH);
        w.NumberOrNull("no_load_temperature_K", p.NoLoadK);
        w.NumberOrNull("least_isothermal_difference_J_mol", Finite(p.DifferenceJPerMol));
        w.NumberOrNull("discharge_temperature_K", p.DischargeK);
        w.NumberOrNull("freezing_margin", p.Freezing?.Margin);
        if (p.Freezing is { } f) w.WriteString("freezes_first", f.Gas);
        else w.WriteNull("freezes_first");
        if (p.TwoLiquids is { } two) w.WriteBoolean("two_liquids_before_throttle", two);
        else w.WriteNull("two_liquids_before_throttle");
        w.Texts("limits_broken", p.Broken);
    }

    private static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
