using Coldwright.Fluids.Substances;

namespace Coldwright.Fluids.EquationsOfState.MultiFluid;

/// <summary>Builds the reference model from the catalogues.</summary>
public static class ReferenceModel
{
    /// <summary>
    /// The model of the named substances. Pairs without published parameters take the Lorentz-Berthelot combining
    /// rules (all four parameters 1), the rule Kunz and Wagner (2012, section 2.3) use where data are missing; each such
    /// pair, and each pair their paper left at that rule, is named in the model's warnings.
    /// </summary>
    public static MultiFluidModel Create(IReadOnlyList<string> names)
    {
        var substances = names.Select(SubstanceCatalog.Get).ToArray();
        var pairs = new List<MultiFluidPair>();
        var estimated = new List<string>();
        for (int i = 0; i < names.Count; i++)
            for (int j = i + 1; j < names.Count; j++)
            {
                var p = PairCatalog.Reference(names[i], names[j]);
                if (p is null || p.Status == PairStatus.Estimated) estimated.Add($"{names[i]}+{names[j]}");
                pairs.Add(p is null
                    ? new MultiFluidPair(i, j, 1, 1, 1, 1, 0, null)
                    : new MultiFluidPair(p.First == names[i] ? i : j, p.First == names[i] ? j : i,
                        p.BetaT, p.GammaT, p.BetaV, p.GammaV, p.Weight, p.Departure));
            }
        string[] warnings = estimated.Count == 0 ? [] :
            [$"reference model: no parameters fitted to measurements for {string.Join(", ", estimated)}; Lorentz-Berthelot combining rules are used"];
        return new MultiFluidModel(substances, pairs, warnings);
    }
}
