using System.Globalization;
using System.Text.Json;
using Coldwright.Fluids.Substances;
using Coldwright.Fluids.Transport.Terms;

namespace Coldwright.Fluids.Transport;

/// <summary>The published correlations that come with the program (data/transport), read once when first asked for.</summary>
internal static class TransportCatalog
{
    private static readonly Lazy<Dictionary<string, FluidTransportData>> All = new(Load);

    /// <summary>What there is for a substance.</summary>
    public static FluidTransportData Get(string name) => All.Value.TryGetValue(name, out var found)
        ? found
        : throw new ArgumentException($"no transport data for '{name}'; there are some for {string.Join(", ", All.Value.Keys.Order(StringComparer.Ordinal))}");

    private static Dictionary<string, FluidTransportData> Load()
    {
        var found = new Dictionary<string, FluidTransportData>();
        foreach (var document in EmbeddedJson.All("transport/"))
            using (document)
            {
                string source = document.RootElement.GetProperty("source").GetProperty("citation").GetString()!;
                foreach (var list in document.RootElement.EnumerateObject().Where(p => p.Name != "source"))
                    foreach (var entry in list.Value.EnumerateArray())
                    {
                        string name = entry.GetProperty("name").GetString()!;
                        if (!found.TryGetValue(name, out var data)) found.Add(name, data = new FluidTransportData());
                        switch (list.Name)
                        {
                            case "viscosity": data.Viscosity = Read(entry, source, conductivity: false); break;
                            case "conductivity": data.Conductivity = Read(entry, source, conductivity: true); break;
                            case "surface_tension": data.SurfaceTension = Surface(entry, source); break;
                            case "viscosity_scaling": data.ViscosityCurve = Curve(entry, source, "viscosity"); break;
                            case "conductivity_scaling": data.ConductivityCurve = Curve(entry, source, "conductivity"); break;
                            case "conductivity_critical": data.Critical = TransportTermJson.Read(entry, "critical", conductivity: true); break;
                            case "internal_conductivity": data.InternalFactor = (entry.GetProperty("f0").GetDouble(), entry.GetProperty("f1_1_K").GetDouble()); break;
                            case "dilute_gas": data.Dilute = Gas(entry, name); break;
                            case "parachor": data.Parachor = entry.GetProperty("parachor_SI").GetDouble(); break;
                            default: throw new InvalidDataException($"unknown list '{list.Name}' in data/transport ({source})");
                        }
                    }
            }
        return found;
    }

    private static Correlation Read(JsonElement e, string source, bool conductivity)
    {
        string name = e.GetProperty("name").GetString()!, what = conductivity ? "conductivity" : "viscosity";
        var substance = SubstanceCatalog.Get(name);
        double low = Number(e, "minimum_temperature_K") ?? substance.TripleTemperatureK, high = Number(e, "maximum_temperature_K") ?? substance.MaximumTemperatureK;
        return new Correlation
        {
            Name = name,
            Method = new TransportMethod($"{what} correlation of {name}", source, Number(e, "uncertainty_percent"), Note(e)),
            Dilute = TransportTermJson.Read(e, "dilute", conductivity),
            Dense = TransportTermJson.Read(e, "dense", conductivity),
            Critical = TransportTermJson.Read(e, "critical", conductivity),
            MinimumTemperatureK = low,
            MaximumTemperatureK = high,
            RangeWarning = string.Create(CultureInfo.InvariantCulture, $"{what} of {name}: outside the range of its correlation, {low:0.#} to {high:0.#} K"),
        };
    }

    private static ScalingCurve Curve(JsonElement e, string source, string what)
    {
        double scale = Number(e, "scale") ?? 1;
        var n = EmbeddedJson.Numbers(e, "n").Select((v, k) => v / Math.Pow(scale, 1 + 0.5 * k)).ToArray();
        return new ScalingCurve(new TransportMethod($"{what} by residual entropy scaling", source, Number(e, "uncertainty_percent"), Note(e)),
            n, e.GetProperty("maximum_entropy").GetDouble());
    }

    private static KineticTheory Gas(JsonElement e, string name) =>
        new(SubstanceCatalog.Get(name).MolarMass * 1e3, e.GetProperty("sigma_nm").GetDouble(), e.GetProperty("epsilon_K").GetDouble());

    private static SurfaceTensionCurve Surface(JsonElement e, string source) =>
        new(e.GetProperty("reducing_temperature_K").GetDouble(), EmbeddedJson.Numbers(e, "a"), EmbeddedJson.Numbers(e, "t"),
            new TransportMethod($"surface tension correlation of {e.GetProperty("name").GetString()}", source, Number(e, "uncertainty_percent"), Note(e)));

    private static double? Number(JsonElement e, string key) => EmbeddedJson.Section(e, key)?.GetDouble();

    private static string Note(JsonElement e) => EmbeddedJson.Section(e, "note")?.GetString() ?? "";
}

/// <summary>What data/transport holds of one substance; null where there is nothing.</summary>
internal sealed class FluidTransportData
{
    public Correlation? Viscosity { get; set; }
    public Correlation? Conductivity { get; set; }
    public ScalingCurve? ViscosityCurve { get; set; }
    public ScalingCurve? ConductivityCurve { get; set; }
    public TransportTerm[] Critical { get; set; } = [];
    public KineticTheory? Dilute { get; set; }
    /// <summary>
    /// f = f0 + f1 T of the internal part of a dilute conductivity. 1.32: the modified Eucken relation, which McLinden, Klein,
    /// Perkins, Int. J. Refrig. 23 (2000) 43, use where nothing was fitted.
    /// </summary>
    public (double F0, double F1PerK) InternalFactor { get; set; } = (1.32, 0);
    public SurfaceTensionCurve? SurfaceTension { get; set; }
    /// <summary>(N/m)^(1/4) m3/mol.</summary>
    public double? Parachor { get; set; }
}
