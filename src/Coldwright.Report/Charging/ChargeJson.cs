using System.Text.Json;
using Coldwright.Design.Charging;
using Coldwright.Report.Safety;

namespace Coldwright.Report.Charging;

/// <summary>A filling plan as JSON, schema <c>coldwright/charge/1</c>. Gauge pressures count from the room's; other pressures are absolute.</summary>
public static class ChargeJson
{
    /// <summary>The whole document, ending with a line end.</summary>
    /// <param name="report">The plan.</param>
    public static string Write(ChargeReport report) => Json.Text(w =>
    {
        var r = report.Result;
        double room = report.Machine.Room.PressurePa;
        FindingsJson.WriteHead(w, "coldwright/charge/1", report.Machine.Name, r.Findings);
        w.WriteString("model", r.Model);
        w.WriteBoolean("stopped", r.Stopped);
        w.Map("mixture", r.Mixture.Names.Zip(r.Mixture.MoleFractions));
        w.Number("mass_kg", r.MassKg);
        w.Number("amount_mol", r.Moles);
        w.Number("room_temperature_K", report.Machine.Room.TemperatureK);
        w.Number("volume_m3", r.Places.Sum(p => p.VolumeM3));
        w.Map("places_m3", r.Places);
        w.Object("evacuation", () =>
        {
            w.Number("vacuum_Pa", r.Evacuation.VacuumPa);
            w.WriteNumber("rinses", r.Evacuation.Rinses);
            w.WriteString("rinse_gas", r.Evacuation.RinseGas);
            w.Number("rinse_gauge_Pa", r.Evacuation.RinsePa - room);
            w.Number("air_mol", r.Evacuation.AirMol);
            w.Number("water_at_most_mol", r.Evacuation.WaterMol);
        });
        w.Objects("steps", r.Recipe.Steps, s => Step(w, s, room));
        w.Number("standstill_Pa", r.Recipe.StandstillPa);
        w.Number("standstill_liquid_share", r.Recipe.LiquidShare);
        if (r.LowestLimit is { } limit)
            w.Object("standstill_limit", () =>
            {
                w.WriteString("part", limit.Name);
                w.Number("limit_Pa", limit.Pa);
                w.WriteBoolean("broken", !r.StandsBelowLimits);
            });
        else w.WriteNull("standstill_limit");
        w.Objects("traces", r.Traces, t =>
        {
            w.WriteString("name", t.Name);
            w.Number("from_pump", t.FromPump);
            w.Number("from_gases", t.FromGases);
            w.NumberOrNull("freezes_at_K", t.FreezesAtK);
            w.NumberOrNull("dissolves_at_coldest", t.AllowedAtColdest);
        });
        w.Number("coldest_K", r.ColdestK);
        Cold(w, r);
        w.Objects("top_up", r.TopUps, t =>
        {
            w.WriteString("leak", t.Leak);
            w.Number("lost_g", 1e3 * t.LostKg);
            w.Number("standstill_now_Pa", t.PressurePa);
            w.Map("left", r.Mixture.Names.Zip(t.Left));
            w.Map("add_g", r.Mixture.Names.Zip(t.AddKg, (n, kg) => (n, 1e3 * kg)));
        });
        w.Texts("warnings", report.Warnings);
        w.WriteEndObject();
    });

    private static void Step(Utf8JsonWriter w, FillingStep s, double room)
    {
        w.WriteString("gas", s.Gas);
        w.Number("until_gauge_Pa", s.UntilPa - room);
        w.Number("from_gauge_Pa", s.FromPa - room);
        w.Number("grams", 1e3 * s.MassKg);
        w.WriteString("by", s.By == FillingMeasure.Pressure ? "pressure" : "weight");
        w.Object("tolerance", () =>
        {
            w.Number("grams", 1e3 * s.ToleranceKg);
            w.NumberOrNull("Pa", s.TolerancePa);
        });
        w.Number("scale_deviation_g", 1e3 * s.ByScaleKg);
        w.NumberOrNull("gauge_deviation_g", 1e3 * s.ByGaugeKg);
        w.Number("liquid_share", s.LiquidShare);
        w.NumberOrNull("bottle_Pa", s.BottlePa);
        if (s.Error is not { } e) w.WriteNull("error");
        else w.Object("error", () =>
        {
            w.Number("mole_fraction", e.Fraction);
            w.Number("standstill_Pa", e.StandstillPa);
            w.NumberOrNull("cooling", e.Cooling is { } c && double.IsFinite(c) ? c : null);
        });
    }

    private static void Cold(Utf8JsonWriter w, ChargeResult r)
    {
        if (r.Cold is not { Closed: { } closed } cold)
        {
            w.WriteNull("circulating");
            return;
        }
        w.Object("circulating", () =>
        {
            w.Map("mixture", cold.Loop.Composition.Names.Zip(cold.Loop.Composition.MoleFractions));
            w.Number("high_pressure_Pa", cold.Loop.HighPressurePa);
            w.Number("low_pressure_Pa", cold.Loop.LowPressurePa);
            w.NumberOrNull("no_load_temperature_K", cold.NoLoadTemperatureK);
            w.Number("operating_temperature_K", cold.OperatingTemperatureK);
            w.Number("liquid_share", closed.LiquidShare);
            w.NumberOrNull("collected_L_h", cold.Liquid?.CollectedLPerH);
        });
    }
}
