using System.Text.Json;
using Coldwright.Fluids.Substances;

namespace Coldwright.Fluids.Transport.Terms;

/// <summary>Reads the terms of data/transport (layout in its README).</summary>
internal static class TransportTermJson
{
    /// <summary>The terms of a list; none when the list is absent.</summary>
    /// <param name="parent">The object that holds the list.</param>
    /// <param name="key">Name of the list.</param>
    /// <param name="conductivity">True when the terms belong to a conductivity.</param>
    public static TransportTerm[] Read(JsonElement parent, string key, bool conductivity) =>
        parent.TryGetProperty(key, out var list) ? [.. list.EnumerateArray().Select(e => Term(e, conductivity))] : [];

    private static TransportTerm Term(JsonElement e, bool conductivity)
    {
        double N(string key) => e.GetProperty(key).GetDouble();
        double[] A(string key) => EmbeddedJson.Numbers(e, key);
        return e.GetProperty("kind").GetString() switch
        {
            "collision_integral" => new CollisionIntegral(N("factor"), N("molar_mass_g_mol"), N("sigma_nm"), N("epsilon_K"), A("a"), A("t")),
            "kinetic_theory" => new KineticTheory(N("molar_mass_g_mol"), N("sigma_nm"), N("epsilon_K")),
            "temperature_ratio" => new TemperatureRatio(N("reducing_temperature_K"), A("a"), A("t"), A("b"), A("u")),
            "collision_series" => new CollisionSeries(N("factor"), N("epsilon_K"), A("a")),
            "carbon_dioxide_dilute" => new CarbonDioxideDilute(N("factor"), A("a")),
            "dilute_viscosity_multiple" => new DiluteViscosityMultiple(N("factor")),
            "eucken" => new Eucken(N("factor"), N("epsilon_K"), N("f0"), N("f1"), Read(e, "viscosity", conductivity: false)),
            "initial_density" => new InitialDensity(N("sigma_nm"), N("epsilon_K"), A("b"), A("t")),
            "power_exponential" => Powers(e, N("reducing_temperature_K"), N("reducing_density_mol_m3")),
            "free_volume" => new FreeVolume(N("reducing_temperature_K"), N("reducing_density_mol_m3"), N("factor"), N("d"), A("g"), A("h"), A("p"), A("q")),
            "rational_density" => new RationalDensity(N("factor"), Powers(e.GetProperty("numerator"), N("reducing_temperature_K"), N("reducing_density_mol_m3")),
                Powers(e.GetProperty("denominator"), N("reducing_temperature_K"), N("reducing_density_mol_m3"))),
            "friction_theory" => new FrictionTheory(N("reducing_temperature_K"), A("ideal"), A("attractive"), A("repulsive"),
                A("ideal_squared"), A("attractive_squared"), A("repulsive_squared")),
            "hydrogen_dense" => new HydrogenDense(N("reducing_temperature_K"), N("reducing_density_kg_m3"), A("c")),
            "carbon_dioxide_dense" => new CarbonDioxideDense(N("triple_temperature_K"), N("triple_liquid_density_kg_m3"), N("gas_constant_J_molK"),
                N("molar_mass_g_mol"), N("c1"), N("c2"), N("exponent")),
            "exponential_grid" => new ExponentialGrid(conductivity, N("reducing_temperature_K"), N("reducing_density_kg_m3"),
                [.. e.GetProperty("c").EnumerateArray().Select(row => row.EnumerateArray().Select(v => v.GetDouble()).ToArray())]),
            "rate_process" => new RateProcess(conductivity, N("limit_density_mol_m3"), N("exponent"), N("factor"), N("activation_J_mol")),
            "critical_crossover" => new CriticalCrossover(N("critical_density_mol_m3"), N("critical_pressure_Pa"), N("reference_temperature_K"),
                N("amplitude_R"), N("gamma"), N("nu"), N("Gamma"), N("correlation_length_m"), N("cutoff_1_m")),
            "hyperbolic_peak" => new HyperbolicPeak(N("peak"), N("critical_temperature_K"), N("critical_density_mol_m3")),
            "methane_conductivity_dense" => new MethaneConductivityDense(N("factor"), Powers(e, N("reducing_temperature_K"), N("reducing_density_mol_m3")),
                N("reducing_density_mol_m3"), N("saturation")),
            "methane_conductivity_critical" => new MethaneConductivityCritical(N("factor"), N("reducing_temperature_K"), N("reducing_density_mol_m3"),
                N("compressibility"), N("exponent"), N("F_T"), N("F_rho"), N("F_A"), Read(e, "viscosity", conductivity: false)),
            "helium_viscosity_dilute" => new HeliumViscosityDilute(Helium(e)),
            "helium_viscosity_dense" => new HeliumViscosityDense(Helium(e)),
            "helium_conductivity_dilute" => new HeliumConductivityDilute(N("factor"), N("exponent"), A("a")),
            "helium_conductivity_dense" => new HeliumConductivityDense(N("reducing_density_kg_m3"), A("linear"), A("cubic"), A("logarithmic")),
            var other => throw new InvalidDataException($"unknown kind of transport term '{other}'"),
        };
    }

    private static PowerExponential Powers(JsonElement e, double reducingTemperatureK, double reducingDensity) =>
        new(reducingTemperatureK, reducingDensity, EmbeddedJson.Numbers(e, "a"), EmbeddedJson.Numbers(e, "d"), EmbeddedJson.Numbers(e, "t"),
            EmbeddedJson.Numbers(e, "g"), EmbeddedJson.Numbers(e, "l"));

    private static HeliumViscosity Helium(JsonElement e) => new(EmbeddedJson.Numbers(e, "zero_density"), EmbeddedJson.Numbers(e, "b"),
        EmbeddedJson.Numbers(e, "c"), EmbeddedJson.Numbers(e, "d"), EmbeddedJson.Numbers(e, "warm"));
}
