using Coldwright.Fluids.EquationsOfState.MultiFluid;

namespace Coldwright.Fluids.Substances;

/// <summary>Where a pair parameter comes from.</summary>
public enum PairStatus
{
    /// <summary>Fitted to measurements in the cited paper.</summary>
    Fitted,
    /// <summary>From a published combining rule, without data for the pair.</summary>
    Estimated,
}

/// <summary>A binary parameter set of the multi-fluid model as published.</summary>
public sealed record ReferencePair(string First, string Second, double BetaT, double GammaT, double BetaV, double GammaV,
    double Weight, ResidualTerms? Departure, PairStatus Status, string Source);

/// <summary>A published Peng-Robinson interaction parameter.</summary>
public sealed record CubicPair(string First, string Second, double Kij, string Source);

/// <summary>Published binary parameters (data/pairs), read once.</summary>
public static class PairCatalog
{
    private static readonly Lazy<(Dictionary<(string, string), ReferencePair> Reference, Dictionary<(string, string), CubicPair> Cubic)> All = new(Load);

    /// <summary>The multi-fluid parameters of a pair in either order, or null when none are published.</summary>
    public static ReferencePair? Reference(string a, string b) => All.Value.Reference.GetValueOrDefault(Key(a, b));

    /// <summary>The Peng-Robinson parameter of a pair in either order, or null when none is published.</summary>
    public static CubicPair? Cubic(string a, string b) => All.Value.Cubic.GetValueOrDefault(Key(a, b));

    private static (string, string) Key(string a, string b) => string.CompareOrdinal(a, b) < 0 ? (a, b) : (b, a);

    private static (Dictionary<(string, string), ReferencePair>, Dictionary<(string, string), CubicPair>) Load()
    {
        var reference = new Dictionary<(string, string), ReferencePair>();
        var cubic = new Dictionary<(string, string), CubicPair>();
        var documents = EmbeddedJson.All("pairs/").ToArray();
        // a paper may use a departure function published in another, so all of them are read first
        var departures = new Dictionary<string, ResidualTerms>();
        foreach (var document in documents)
            if (document.RootElement.TryGetProperty("departures", out var list))
                foreach (var d in list.EnumerateArray()) departures.Add(d.GetProperty("name").GetString()!, ResidualTermsJson.Read(d));
        foreach (var document in documents)
        {
            var root = document.RootElement;
            string source = root.GetProperty("source").GetProperty("citation").GetString()!;
            bool isCubic = root.GetProperty("kind").GetString() == "peng-robinson";
            foreach (var p in root.GetProperty("pairs").EnumerateArray())
            {
                string first = p.GetProperty("first").GetString()!, second = p.GetProperty("second").GetString()!;
                if (isCubic)
                {
                    cubic.Add(Key(first, second), new CubicPair(first, second, p.GetProperty("kij").GetDouble(), source));
                    continue;
                }
                var name = p.GetProperty("departure").GetString();
                reference.Add(Key(first, second), new ReferencePair(first, second,
                    p.GetProperty("beta_T").GetDouble(), p.GetProperty("gamma_T").GetDouble(),
                    p.GetProperty("beta_v").GetDouble(), p.GetProperty("gamma_v").GetDouble(),
                    p.GetProperty("weight").GetDouble(), name is null ? null : departures[name],
                    p.GetProperty("status").GetString() == "fitted" ? PairStatus.Fitted : PairStatus.Estimated, source));
            }
            document.Dispose();
        }
        return (reference, cubic);
    }
}
