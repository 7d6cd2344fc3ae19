using Coldwright.Fluids.Substances;
using Coldwright.Numerics.Scalars;

namespace Coldwright.Fluids.EquationsOfState.MultiFluid;

/// <summary>Parameters of one pair in the multi-fluid model.</summary>
/// <param name="First">Index of the component that beta refers to.</param>
/// <param name="Second">Index of the other.</param>
/// <param name="BetaT">Asymmetry of the reducing temperature.</param>
/// <param name="GammaT">Strength of the reducing temperature.</param>
/// <param name="BetaV">Asymmetry of the reducing volume.</param>
/// <param name="GammaV">Strength of the reducing volume.</param>
/// <param name="Weight">Weight F of the departure function; 0 for none.</param>
/// <param name="Departure">Departure function; null for none.</param>
public sealed record MultiFluidPair(int First, int Second, double BetaT, double GammaT, double BetaV, double GammaV,
    double Weight, ResidualTerms? Departure);

/// <summary>
/// Reference model: alphar(delta, tau, x) = sum x_i alphar_i + sum x_i x_j F_ij alphar_ij with delta = rho v_r(x),
/// tau = T_r(x)/T. Source: Kunz and Wagner, J. Chem. Eng. Data 57 (2012) 3032; pure equations from their papers.
/// With one component it is that fluid's reference equation, with the gas constant of its paper.
/// </summary>
public sealed class MultiFluidModel : HelmholtzModel
{
    private readonly string[] _names;
    private readonly string[] _warnings;

    internal TermTable Table { get; }
    internal ReducingForm ReducingTemperature { get; }
    internal ReducingForm ReducingVolume { get; }
    internal (int I, int J, double F)[] Departures { get; }
    internal ResidualTerms[] Owners { get; }
    internal double[] LimitVolume { get; }
    internal double[] CriticalVolume { get; }
    internal double[] TauLimit { get; }

    /// <param name="substances">Components.</param>
    /// <param name="pairs">Every pair once, in any order; a missing pair is refused.</param>
    /// <param name="warnings">What to tell the person about estimated pairs.</param>
    public MultiFluidModel(IReadOnlyList<Substance> substances, IReadOnlyList<MultiFluidPair> pairs, IReadOnlyList<string> warnings)
    {
        Substances = substances;
        int n = substances.Count;
        if (n is < 1 or > 12) throw new ArgumentException($"a mixture has 1 to 12 components, got {n}");
        if (pairs.Count != n * (n - 1) / 2) throw new ArgumentException($"{n} components need {n * (n - 1) / 2} pairs, got {pairs.Count}");
        _warnings = warnings.ToArray();
        GasConstant = n == 1 ? substances[0].GasConstant : Fluids.Substances.GasConstant.Mixture;

        var tc = substances.Select(s => s.ReducingTemperatureK).ToArray();
        var vc = substances.Select(s => 1 / s.ReducingDensity).ToArray();
        double[] bt = new double[n * n], ft = new double[n * n], bv = new double[n * n], fv = new double[n * n];
        var departures = new List<(int, int, double)>();
        var owners = substances.Select(s => s.Residual).ToList();
        foreach (var p in pairs)
        {
            bool straight = p.First < p.Second;
            int i = straight ? p.First : p.Second, j = straight ? p.Second : p.First, k = i * n + j;
            bt[k] = straight ? p.BetaT : 1 / p.BetaT;
            bv[k] = straight ? p.BetaV : 1 / p.BetaV;
            ft[k] = 2 * bt[k] * p.GammaT * Math.Sqrt(tc[i] * tc[j]);
            fv[k] = 2 * bv[k] * p.GammaV * Math.Pow(Math.Cbrt(vc[i]) + Math.Cbrt(vc[j]), 3) / 8;
            if (p.Weight != 0 && p.Departure is not null)
            {
                departures.Add((i, j, p.Weight));
                owners.Add(p.Departure);
            }
        }
        Departures = departures.ToArray();
        Owners = owners.ToArray();
        ReducingTemperature = new ReducingForm(tc, bt, ft);
        ReducingVolume = new ReducingForm(vc, bv, fv);
        Table = new TermTable(owners);
        LimitVolume = substances.Select(s => 1 / s.TripleLiquidDensity).ToArray();
        CriticalVolume = vc;
        TauLimit = substances.Select(TauLimits.Of).Concat(Departures.Select(_ => TauLimits.Departure)).ToArray();
        _names = substances.Select(s => s.Name)
            .Concat(Departures.Select(d => $"{substances[d.Item1].Name}+{substances[d.Item2].Name}")).ToArray();
    }

    /// <inheritdoc/>
    public override string Name => "reference";
    /// <inheritdoc/>
    public override IReadOnlyList<Substance> Substances { get; }
    /// <inheritdoc/>
    public override double GasConstant { get; }
    /// <inheritdoc/>
    public override IReadOnlyList<string> ContributionNames => _names;
    /// <inheritdoc/>
    public override IReadOnlyList<string> Warnings => _warnings;
    /// <inheritdoc/>
    public override PhaseEvaluation CreateEvaluation() => new MultiFluidEvaluation(this);

    /// <inheritdoc/>
    public override void Contributions<T>(T temperatureK, T molarDensity, ReadOnlySpan<T> x, Span<T> parts)
    {
        var delta = molarDensity * ReducingVolume.Value(x);
        var tau = ReducingTemperature.Value(x) / temperatureK;
        for (int i = 0; i < Count; i++) parts[i] = x[i] * ResidualFormula.Evaluate(Owners[i], delta, tau, TauLimit[i]);
        for (int d = 0; d < Departures.Length; d++)
        {
            var (i, j, f) = Departures[d];
            parts[Count + d] = f * (x[i] * x[j] * ResidualFormula.Evaluate(Owners[Count + d], delta, tau, TauLimit[Count + d]));
        }
    }
}
