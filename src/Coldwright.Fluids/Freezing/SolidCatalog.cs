using System.Text.Json;
using Coldwright.Fluids.Substances;

namespace Coldwright.Fluids.Freezing;

/// <summary>The solids whose data come with the program (data/freezing), read once when first asked for.</summary>
public static class SolidCatalog
{
    private static readonly Lazy<IReadOnlyDictionary<string, SolidSubstance>> All = new(Load);

    /// <summary>Canonical names of the substances with a triple point and a heat of fusion, sorted.</summary>
    public static IReadOnlyList<string> Names => All.Value.Keys.Order(StringComparer.Ordinal).ToArray();

    /// <summary>Data of a canonical name, or null when there are none.</summary>
    public static SolidSubstance? Find(string name) => All.Value.GetValueOrDefault(name);

    private static Dictionary<string, SolidSubstance> Load()
    {
        var documents = EmbeddedJson.All("freezing/").ToArray();
        var triple = new Dictionary<string, double>();
        var heat = new Dictionary<string, double>();
        var sources = new Dictionary<string, List<string>>();
        var transitions = new Dictionary<string, List<SolidTransition>>();
        var warm = new Dictionary<string, JsonElement>();
        var cold = new Dictionary<string, JsonElement>();
        foreach (var document in documents)
        {
            string citation = document.RootElement.GetProperty("source").GetProperty("citation").GetString()!;
            foreach (var list in document.RootElement.EnumerateObject().Where(p => p.Name != "source"))
                foreach (var entry in list.Value.EnumerateArray())
                {
                    string name = entry.GetProperty("name").GetString()!;
                    var cited = ListOf(sources, name);
                    if (!cited.Contains(citation)) cited.Add(citation);
                    switch (list.Name)
                    {
                        case "triple_temperatures": triple.Add(name, entry.GetProperty("triple_temperature_K").GetDouble()); break;
                        case "heats_of_fusion": heat.Add(name, entry.GetProperty("heat_of_fusion_J_mol").GetDouble()); break;
                        case "transitions": ListOf(transitions, name).Add(Transition(entry)); break;
                        case "sublimation": warm.Add(name, entry); break;
                        case "cold_sublimation": cold.Add(name, entry); break;
                        default: throw new InvalidDataException($"unknown list '{list.Name}' in data/freezing ({citation})");
                    }
                }
        }
        var found = triple.Keys.Where(heat.ContainsKey).ToDictionary(name => name, name => new SolidSubstance
        {
            Name = name,
            TripleTemperatureK = triple[name],
            HeatOfFusion = heat[name],
            Transitions = transitions.GetValueOrDefault(name) ?? [],
            Sublimation = warm.TryGetValue(name, out var w) ? Curve(w, cold.TryGetValue(name, out var c) ? c : null) : null,
            Sources = sources[name],
        });
        foreach (var document in documents) document.Dispose();
        return found;
    }

    private static List<T> ListOf<T>(Dictionary<string, List<T>> lists, string name)
    {
        if (!lists.TryGetValue(name, out var list)) lists.Add(name, list = []);
        return list;
    }

    private static SolidTransition Transition(JsonElement e)
    {
        var heat = e.GetProperty("heat_J_mol");
        return new SolidTransition(e.GetProperty("temperature_K").GetDouble(),
            heat.ValueKind == JsonValueKind.Null ? null : heat.GetDouble(), e.GetProperty("note").GetString()!);
    }

    private static SublimationCurve Curve(JsonElement warm, JsonElement? cold)
    {
        bool oneMinusTheta = warm.GetProperty("variable").GetString() switch
        {
            "one_minus_theta" => true,
            "theta" => false,
            var other => throw new InvalidDataException($"unknown variable '{other}' of a sublimation equation"),
        };
        double minimum = (cold ?? warm).GetProperty("minimum_temperature_K").GetDouble();
        return new SublimationCurve(warm.GetProperty("triple_temperature_K").GetDouble(), warm.GetProperty("triple_pressure_Pa").GetDouble(),
            oneMinusTheta, EmbeddedJson.Numbers(warm, "a"), EmbeddedJson.Numbers(warm, "b"), minimum,
            EmbeddedJson.Numbers(cold, "a"), cold?.GetProperty("join_temperature_K").GetDouble() ?? 0,
            warm.GetProperty("solid_molar_volume_m3_mol").GetDouble());
    }
}
