using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;

namespace Coldwright.Machine.Feed;

/// <summary>What the feed gas is made of: the mixture that condenses, and the traces that freeze.</summary>
/// <param name="Mixture">Product with the impurities that condense with it, mole fractions.</param>
/// <param name="Traces">Water and carbon dioxide, mol/mol of the feed, by canonical name.</param>
/// <param name="Said">What had to be assumed.</param>
public sealed record ProductPurity(Composition Mixture, IReadOnlyList<(string Name, double MoleFraction)> Traces, IReadOnlyList<string> Said)
{
    /// <summary>Below this an impurity changes nothing that can be weighed; it is left out of the mixture, mol/mol.</summary>
    public const double LeastShare = 1e-6;

    private static readonly string[] _freezing = ["water", "carbon-dioxide"];

    /// <summary>The gas as the shop sells it.</summary>
    /// <param name="gas">Canonical name of the product.</param>
    /// <param name="shop">The shop; null when there is none: the gas then counts as pure.</param>
    public static ProductPurity Of(string gas, ShopDescription? shop)
    {
        var said = new List<string>();
        var known = shop is not null && shop.GasImpurities.TryGetValue(gas, out var listed) ? listed : new Dictionary<string, double>();
        double rest = shop is not null && shop.GasPurity.TryGetValue(gas, out double purity) ? 1 - purity - known.Values.Sum() : 0;
        var condensing = known.Where(p => !_freezing.Contains(p.Key)).ToDictionary(p => p.Key, p => p.Value);
        if (rest > LeastShare)
        {
            string other = Rest(gas, known.ContainsKey("oxygen"));
            condensing[other] = condensing.GetValueOrDefault(other) + rest;
            said.Add(FormattableString.Invariant($"{1e6 * rest:0.#} ppm of the {gas} are not named in the shop file: taken as {other}; add what its certificate says (oxygen, argon, nitrogen, water, carbon-dioxide)"));
        }
        if (shop is null || !shop.GasPurity.ContainsKey(gas)) said.Add($"the purity of the {gas} is not given: it counts as pure");
        var kept = condensing.Where(p => p.Value >= LeastShare).OrderByDescending(p => p.Value).ToArray();
        double sum = kept.Sum(p => p.Value);
        return new(new Composition([gas, .. kept.Select(p => p.Key)], [1 - sum, .. kept.Select(p => p.Value)]),
            [.. _freezing.Where(known.ContainsKey).Select(n => (n, known[n]))], said);
    }

    /// <summary>
    /// Oxygen in the gas, mol/mol, and whether it is only the most that there can be, because nothing but the purity is known; null when not even that is, or when the gas is oxygen itself.
    /// A label's purity bounds it: specifications of nitrogen count argon as nitrogen and let all of the rest be oxygen (A-A-59155, 2003, table A: 99.95 % with at most 0.05 % of oxygen, 99.50 %
    /// with 0.50 %; USP 32, Nitrogen: 99.0 % with 1.0 %).
    /// </summary>
    /// <param name="gas">Canonical name of the product.</param>
    /// <param name="shop">The shop; null when there is none.</param>
    public static (double MoleFraction, bool IsMost)? Oxygen(string gas, ShopDescription? shop)
    {
        if (shop is null || gas == "oxygen") return null;
        if (shop.GasImpurities.TryGetValue(gas, out var known) && known.TryGetValue("oxygen", out double named)) return (named, false);
        if (!shop.GasPurity.TryGetValue(gas, out double purity)) return null;
        return (Math.Max(0, 1 - purity - (known?.Values.Sum() ?? 0)), true);
    }

    // Our assumption, on the side of caution where it can matter: in nitrogen and argon the unknown rest may be oxygen. Where the oxygen is named it is none;
    // of air's gases the one that boils nearest to it is left then.
    private static string Rest(string gas, bool oxygenIsNamed) => gas switch
    {
        "nitrogen" => oxygenIsNamed ? "argon" : "oxygen",
        "argon" => oxygenIsNamed ? "nitrogen" : "oxygen",
        "oxygen" => "argon",
        _ => "nitrogen",
    };
}
