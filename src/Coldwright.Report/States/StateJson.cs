using System.Text.Json;
using Coldwright.Fluids.States;
using Coldwright.Report.Safety;

namespace Coldwright.Report.States;

/// <summary>A state as JSON, schema <c>coldwright/state/1</c>; further models under <c>second_opinion</c>.</summary>
public static class StateJson
{
    /// <summary>The whole document, ending with a line end.</summary>
    /// <param name="report">The state.</param>
    public static string Write(StateReport report) => Json.Text(w =>
    {
        var main = report.States[0];
        w.WriteStartObject();
        w.WriteString("schema", "coldwright/state/1");
        w.Map("mixture", report.Names.Zip(main.State.Composition));
        State(w, report.Names, main);
        if (report.States.Count > 1)
            w.Object("second_opinion", () =>
            {
                State(w, report.Names, report.States[1]);
                w.Texts("warnings", report.States[1].Warnings);
            });
        w.Texts("warnings", main.Warnings);
        FindingsJson.WriteProperty(w, []);
        w.WriteEndObject();
    });

    private static void State(Utf8JsonWriter w, IReadOnlyList<string> names, ModelState answer)
    {
        var state = answer.State;
        w.WriteString("model", answer.Model);
        w.Number("temperature_K", state.TemperatureK);
        w.Number("pressure_Pa", state.PressurePa);
        w.Number("vapour_fraction", state.VapourFraction);
        w.Number("molar_mass_kg_mol", state.MolarMass);
        w.Number("molar_density_mol_m3", state.MolarDensity);
        w.Number("molar_enthalpy_J_mol", state.MolarEnthalpy);
        w.Number("molar_entropy_J_molK", state.MolarEntropy);
        w.NumberOrNull("surface_tension_N_m", answer.SurfaceTensionNPerM);
        w.Objects("phases", state.Phases, p =>
        {
            w.WriteString("kind", FluidState.Name(p.Kind));
            w.Number("fraction", p.Fraction);
            w.Map("composition", names.Zip(p.Composition));
            w.Number("molar_density_mol_m3", p.MolarDensity);
            w.Number("molar_enthalpy_J_mol", p.MolarEnthalpy);
            w.Number("molar_entropy_J_molK", p.MolarEntropy);
            w.Number("molar_heat_capacity_J_molK", p.MolarHeatCapacity);
            w.Number("speed_of_sound_m_s", p.SpeedOfSound);
            w.NumberOrNull("viscosity_Pa_s", p.ViscosityPaS);
            w.NumberOrNull("conductivity_W_mK", p.ConductivityWPerMK);
        });
    }
}
