namespace Coldwright.Fluids.EquationsOfState.MultiFluid;

/// <summary>
/// All terms of a mixture laid out for the inner loops. A term is coefficient(tau) times a density function; equal
/// density functions of different terms are shared ("basis"), so that on an isotherm they collapse into one
/// polynomial whose coefficients are fixed. Owners 0..n-1 are the pure fluids, then the departure functions.
/// </summary>
internal sealed class TermTable
{
    /// <summary>First power term of each owner (one more entry at the end).</summary>
    public readonly int[] PowerStart;
    public readonly double[] PowerN, PowerT, PowerM;
    public readonly int[] PowerBasis;
    /// <summary>Density exponent and exponential group of each power term.</summary>
    public readonly int[] PowerD, PowerGroup;
    /// <summary>Index of the terms with a tau exponential (m &gt; 0); few, so kept apart.</summary>
    public readonly int[] TauExponential;

    public readonly int[] BasisD, BasisGroup;
    /// <summary>Exponential groups exp(-g delta^l); group 0 is "none".</summary>
    public readonly int[] GroupL;
    public readonly double[] GroupG;
    public readonly int HighestD;

    public readonly int[] GaussStart;
    public readonly double[] GaussN, GaussT, GaussBetaTau, GaussGammaTau;
    public readonly int[] GaussBasis;
    public readonly int[] GaussD;
    public readonly double[] GaussEta, GaussEpsilon, GaussBetaDelta, GaussGammaDelta;

    /// <summary>Owners with non-analytic terms.</summary>
    public readonly (int Owner, NonAnalyticTerms Terms)[] NonAnalytic;

    public TermTable(IReadOnlyList<ResidualTerms> owners)
    {
        var groups = new List<(int L, double G)> { (0, 0) };
        var basis = new List<(int D, int Group)>();
        var gaussBasis = new List<(int, double, double, double, double)>();
        List<double> n = [], t = [], m = [], gn = [], gt = [], gb = [], gg = [];
        List<int> index = [], gIndex = [], tauExp = [];
        PowerStart = new int[owners.Count + 1];
        GaussStart = new int[owners.Count + 1];
        for (int o = 0; o < owners.Count; o++)
        {
            var p = owners[o].Power;
            for (int k = 0; k < p.N.Length; k++)
            {
                int group = p.L[k] == 0 ? 0 : IndexOf(groups, (p.L[k], p.G[k]));
                if (p.M[k] != 0) tauExp.Add(n.Count);
                n.Add(p.N[k]); t.Add(p.T[k]); m.Add(p.M[k]);
                index.Add(IndexOf(basis, (p.D[k], group)));
            }
            PowerStart[o + 1] = n.Count;
            var g = owners[o].Gaussian;
            for (int k = 0; k < g.N.Length; k++)
            {
                gn.Add(g.N[k]); gt.Add(g.T[k]); gb.Add(g.BetaTau[k]); gg.Add(g.GammaTau[k]);
                gIndex.Add(IndexOf(gaussBasis, (g.D[k], g.Eta[k], g.Epsilon[k], g.BetaDelta[k], g.GammaDelta[k])));
            }
            GaussStart[o + 1] = gn.Count;
        }
        (PowerN, PowerT, PowerM, PowerBasis) = (n.ToArray(), t.ToArray(), m.ToArray(), index.ToArray());
        TauExponential = tauExp.ToArray();
        (PowerD, PowerGroup) = (index.Select(j => basis[j].D).ToArray(), index.Select(j => basis[j].Group).ToArray());
        (BasisD, BasisGroup) = (basis.Select(b => b.D).ToArray(), basis.Select(b => b.Group).ToArray());
        (GroupL, GroupG) = (groups.Select(x => x.L).ToArray(), groups.Select(x => x.G).ToArray());
        HighestD = Math.Max(BasisD.DefaultIfEmpty(0).Max(), Math.Max(GroupL.Max(), 8));
        (GaussN, GaussT, GaussBetaTau, GaussGammaTau, GaussBasis) = (gn.ToArray(), gt.ToArray(), gb.ToArray(), gg.ToArray(), gIndex.ToArray());
        GaussD = gaussBasis.Select(b => b.Item1).ToArray();
        GaussEta = gaussBasis.Select(b => b.Item2).ToArray();
        GaussEpsilon = gaussBasis.Select(b => b.Item3).ToArray();
        GaussBetaDelta = gaussBasis.Select(b => b.Item4).ToArray();
        GaussGammaDelta = gaussBasis.Select(b => b.Item5).ToArray();
        NonAnalytic = owners.Select((r, o) => (o, r.NonAnalytic)).Where(x => x.NonAnalytic.N.Length > 0).ToArray();
    }

    private static int IndexOf<TKey>(List<TKey> list, TKey key) where TKey : IEquatable<TKey>
    {
        int i = list.IndexOf(key);
        if (i >= 0) return i;
        list.Add(key);
        return list.Count - 1;
    }
}
