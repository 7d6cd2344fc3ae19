using System.Text.Json;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.IdealGas;

namespace Coldwright.Fluids.Substances;

/// <summary>The substances whose published equations come with the program (data/fluids), read once when first asked for.</summary>
public static class SubstanceCatalog
{
    private static readonly Lazy<IReadOnlyDictionary<string, Substance>> All = new(Load);

    /// <summary>Canonical names, sorted.</summary>
    public static IReadOnlyList<string> Names => All.Value.Keys.Order(StringComparer.Ordinal).ToArray();

    /// <summary>The substance of a canonical name.</summary>
    /// <exception cref="ArgumentException">The name is not in the catalogue.</exception>
    public static Substance Get(string name) => All.Value.TryGetValue(name, out var substance)
        ? substance
        : throw new ArgumentException($"no equation of state for '{name}'; there is one for {string.Join(", ", Names)}");

    private static Dictionary<string, Substance> Load()
    {
        var found = new Dictionary<string, Substance>();
        foreach (var document in EmbeddedJson.All("fluids/"))
            using (document)
            {
                string source = document.RootElement.GetProperty("source").GetProperty("citation").GetString()!;
                foreach (var fluid in document.RootElement.GetProperty("fluids").EnumerateArray())
                {
                    var substance = Read(fluid, source);
                    found.Add(substance.Name, substance);
                }
            }
        return found;
    }

    private static Substance Read(JsonElement f, string source)
    {
        double Number(string key) => f.GetProperty(key).GetDouble();
        var cp = f.GetProperty("ideal_heat_capacity");
        var einstein = EmbeddedJson.Section(cp, "einstein");
        var power = EmbeddedJson.Section(cp, "power");
        var saturation = f.GetProperty("saturation_estimates");
        return new Substance
        {
            Name = f.GetProperty("name").GetString()!,
            Formula = f.GetProperty("formula").GetString()!,
            MolarMass = Number("molar_mass_kg_mol"),
            GasConstant = Number("gas_constant_J_molK"),
            ReducingTemperatureK = Number("reducing_temperature_K"),
            ReducingDensity = Number("reducing_density_mol_m3"),
            CriticalTemperatureK = Number("critical_temperature_K"),
            CriticalPressurePa = Number("critical_pressure_Pa"),
            CriticalDensity = Number("critical_density_mol_m3"),
            TripleTemperatureK = Number("triple_temperature_K"),
            TripleLiquidDensity = Number("triple_liquid_density_mol_m3"),
            AcentricFactor = Number("acentric_factor"),
            MaximumTemperatureK = Number("maximum_temperature_K"),
            MaximumPressurePa = Number("maximum_pressure_Pa"),
            IdealGas = new IdealGasHeatCapacity(cp.GetProperty("constant").GetDouble(),
                EmbeddedJson.Numbers(einstein, "n"), EmbeddedJson.Numbers(einstein, "theta_K"),
                EmbeddedJson.Numbers(power, "n"), EmbeddedJson.Numbers(power, "exponent")),
            Residual = ResidualTermsJson.Read(f.GetProperty("residual")),
            Saturation = new SaturationEstimates(Fit(saturation, "pressure"), Fit(saturation, "liquid_density"), Fit(saturation, "vapour_density")),
            Source = source,
        };
    }

    private static SaturationFit Fit(JsonElement parent, string key)
    {
        var f = parent.GetProperty(key);
        var form = f.GetProperty("form").GetString() switch
        {
            "direct" => SaturationForm.Direct,
            "exponential" => SaturationForm.Exponential,
            "scaled_exponential" => SaturationForm.ScaledExponential,
            var other => throw new InvalidDataException($"unknown saturation form '{other}'"),
        };
        return new SaturationFit(form, f.GetProperty("reducing").GetDouble(), f.GetProperty("T_reducing_K").GetDouble(),
            EmbeddedJson.Numbers(f, "n"), EmbeddedJson.Numbers(f, "t"));
    }
}
