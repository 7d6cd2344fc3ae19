using System.Text.Json;
using Coldwright.Fluids.States;
using Coldwright.Report.Rating;
using Coldwright.Report.Safety;
using Coldwright.Report.States;

namespace Coldwright.Report.Tests;

public class JsonTests
{
    [Fact]
    public void Rate_has_the_published_keys()
    {
        var root = JsonDocument.Parse(RatingJson.Write(FakeRating.Working)).RootElement;
        Assert.Equal("coldwright/rate/1", root.GetProperty("schema").GetString());
        Keys(root, "schema machine model no_load_temperature_K throttle_outlet_K operating_temperature_K limited_by power liquid energy_kWh_L cost_per_L carnot_fraction cooling_curve loop heat_leak_W exergy balance limits closed sensitivity second_opinion warnings findings");
        Keys(root.GetProperty("cooling_curve")[0], "temperature_K cooling_W gross_W heat_leak_W warm_end_difference_K pinch_K pinch_temperature_K");
        Keys(root.GetProperty("loop"), "high_pressure_Pa low_pressure_Pa molar_flow_mol_s mass_flow_kg_s discharge_temperature_K precooling_W recuperator_duty_W composition points");
        Keys(root.GetProperty("loop").GetProperty("points")[0], "name part temperature_K pressure_Pa molar_enthalpy_J_mol molar_entropy_J_molK vapour_fraction phases");
        Keys(root.GetProperty("power"), "main_W precool_W feed_W fans_W total_W");
        Keys(root.GetProperty("liquid"), "substance condensing_pressure_Pa condensing_temperature_K liquid_temperature_K rate_kg_s rate_L_h collected_L_h flash_fraction heat_per_kg_J");
        Keys(root.GetProperty("cost_per_L"), "currency electricity gas charge total");
        Keys(root.GetProperty("exergy"), "input_W feed_W product_W losses_W");
        Keys(root.GetProperty("balance"), "mass energy exergy");
        Keys(root.GetProperty("limits")[0], "what part value limit unit broken");
        Keys(root.GetProperty("findings")[0], "id grade part value limit unit rule source consequence do");
        Keys(root.GetProperty("second_opinion"), "model no_load_temperature_K throttle_outlet_K operating_temperature_K limited_by power liquid energy_kWh_L cost_per_L carnot_fraction high_pressure_Pa low_pressure_Pa mass_flow_kg_s warnings");
    }

    [Fact]
    public void Cooling_is_what_is_left_after_the_leak() => Assert.All(
        JsonDocument.Parse(RatingJson.Write(FakeRating.Working)).RootElement.GetProperty("cooling_curve").EnumerateArray(),
        p => Assert.Equal(p.GetProperty("gross_W").GetDouble() - p.GetProperty("heat_leak_W").GetDouble(), p.GetProperty("cooling_W").GetDouble(), 12));

    [Fact]
    public void What_does_not_exist_is_null_and_lists_are_always_there()
    {
        var root = JsonDocument.Parse(RatingJson.Write(FakeRating.Block)).RootElement;
        foreach (var key in new[] { "no_load_temperature_K", "liquid", "energy_kWh_L", "cost_per_L", "closed", "sensitivity", "second_opinion" }) Assert.Equal(JsonValueKind.Null, root.GetProperty(key).ValueKind);
        Assert.Equal(0, root.GetProperty("warnings").GetArrayLength());
        Assert.Equal(1, root.GetProperty("findings").GetArrayLength());
    }

    [Fact]
    public void A_number_that_is_none_is_refused_by_name()
    {
        var broken = FakeRating.Block with { Result = FakeRating.Block.Result with { Main = FakeRating.Block.Main with { CarnotFraction = double.NaN } } };
        Assert.Contains("carnot_fraction", Assert.Throws<InvalidOperationException>(() => RatingJson.Write(broken)).Message);
    }

    [Fact]
    public void Findings_stand_alone_too() =>
        Keys(JsonDocument.Parse(FindingsJson.Write(new SafetyReport { Machine = FakeRating.Working.Machine, Review = new(FakeRating.Working.Findings, []) })).RootElement, "schema machine findings warnings");

    [Fact]
    public void State_has_the_published_keys()
    {
        var root = JsonDocument.Parse(StateJson.Write(State)).RootElement;
        Keys(root, "schema mixture model temperature_K pressure_Pa vapour_fraction molar_mass_kg_mol molar_density_mol_m3 molar_enthalpy_J_mol molar_entropy_J_molK surface_tension_N_m phases second_opinion warnings findings");
        Keys(root.GetProperty("phases")[0], "kind fraction composition molar_density_mol_m3 molar_enthalpy_J_mol molar_entropy_J_molK molar_heat_capacity_J_molK speed_of_sound_m_s viscosity_Pa_s conductivity_W_mK");
        Assert.Equal(0.35, root.GetProperty("mixture").GetProperty("nitrogen").GetDouble());
        Assert.Equal("vapour", root.GetProperty("phases")[0].GetProperty("kind").GetString());
        Assert.Equal(0.011, root.GetProperty("surface_tension_N_m").GetDouble());
        Assert.Equal(9e-5, root.GetProperty("phases")[1].GetProperty("viscosity_Pa_s").GetDouble());
        Assert.Equal(JsonValueKind.Null, root.GetProperty("phases")[0].GetProperty("conductivity_W_mK").ValueKind);
    }

    [Theory]
    [InlineData(UnitSystem.Si)]
    [InlineData(UnitSystem.Us)]
    public void State_as_text_fits_and_prints_the_caloric_zero(UnitSystem units)
    {
        var text = StateText.Write(State with { Units = units }, colour: false);
        Assert.All(text.Split('\n'), l => Assert.True(l.Length <= 88, l));
        foreach (var words in new[] { "Caloric zero: h = 0 and s = 0", "whole", "vapour", "liquid", "reference model", "cubic model", "invented", "surface tension", "11.000", "90.00", "170.00", "viscosity by guessing: nobody; 7 % (of all guesses)." }) Assert.Contains(words, text);
    }

    /// <summary>Invented numbers of the right shape.</summary>
    internal static StateReport State { get; } = new()
    {
        Names = ["nitrogen", "methane"],
        States =
        [
            new("reference", TwoPhases(1), ["the numbers are invented"]) { SurfaceTensionNPerM = 0.011, TransportMethods = [new("viscosity by guessing", "nobody", 7, "of all guesses")] },
            new("cubic", TwoPhases(1.02), []),
        ],
    };

    private static FluidState TwoPhases(double factor) => new()
    {
        TemperatureK = 120, PressurePa = 1e6, Composition = [0.35, 0.65], MolarMass = 0.0202,
        Phases =
        [
            new() { Kind = PhaseKind.Vapour, Fraction = 0.4, Composition = [0.74, 0.26], MolarDensity = 1180 * factor, MolarEnthalpy = -5700, MolarEntropy = -45, MolarHeatCapacity = 38, MolarIsochoricHeatCapacity = 22, SpeedOfSound = 215, ViscosityPaS = 8.4e-6, MolarMass = 0.0249, LnFugacityCoefficients = [0, 0] },
            new() { Kind = PhaseKind.Liquid, Fraction = 0.6, Composition = [0.09, 0.91], MolarDensity = 24800 * factor, MolarEnthalpy = -12950, MolarEntropy = -98, MolarHeatCapacity = 57, MolarIsochoricHeatCapacity = 33, SpeedOfSound = 1190, ViscosityPaS = 9e-5, ConductivityWPerMK = 0.17, MolarMass = 0.0171, LnFugacityCoefficients = [0, 0] },
        ],
    };

    private static void Keys(JsonElement element, string expected) => Assert.Equal(expected.Split(' ').Order(StringComparer.Ordinal), element.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal));
}
