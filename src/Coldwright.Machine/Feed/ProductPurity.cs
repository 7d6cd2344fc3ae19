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
            // Our assumption, on the side of caution where it can matter: in nitrogen and argon the unknown rest may be oxygen.
            string other = gas is "nitrogen" or "argon" ? "oxygen" : gas == "oxygen" ? "argon" : "nitrogen";
            condensing[other] = condensing.GetValueOrDefault(other) + rest;
            said.Add(FormattableString.Invariant($"{1e6 * rest:0.#} ppm of the {gas} are not named in the shop file: taken as {other}; add what its certificate says (oxygen, argon, nitrogen, water, carbon-dioxide)"));
        }
        if (shop is null || !shop.GasPurity.ContainsKey(gas)) said.Add($"the purity of the {gas} is not given: it counts as pure");
        var kept = condensing.Where(p => p.Value >= LeastShare).OrderByDescending(p => p.Value).ToArray();
        double sum = kept.Sum(p => p.Value);
        return new(new Composition([gas, .. kept.Select(p => p.Key)], [1 - sum, .. kept.Select(p => p.Value)]),
            [.. _freezing.Where(known.ContainsKey).Select(n => (n, known[n]))], said);
    }
}
