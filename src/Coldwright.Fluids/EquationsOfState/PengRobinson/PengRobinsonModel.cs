using Coldwright.Fluids.Substances;
using Coldwright.Numerics.Scalars;

namespace Coldwright.Fluids.EquationsOfState.PengRobinson;

/// <summary>
/// Cubic model: Peng and Robinson, Ind. Eng. Chem. Fundam. 15 (1976) 59, with van der Waals one-fluid mixing
/// (a = sum x_i x_j sqrt(a_i a_j)(1 - k_ij), b = sum x_i b_i) and a constant volume translation per component
/// (Peneloux, Rauzy, Freze, Fluid Phase Equilib. 8 (1982) 7), which moves densities and leaves phase equilibrium as it is.
/// </summary>
public sealed class PengRobinsonModel : HelmholtzModel
{
    // b = OmegaB R Tc/pc, a = OmegaA R^2 Tc^2/pc; digits from the critical conditions, not the rounded 0.0778 and 0.45724
    internal const double OmegaB = 0.077796073903888455;
    internal const double OmegaA = 0.45723552892138218;
    internal static readonly double Delta1 = 1 + Math.Sqrt(2), Delta2 = 1 - Math.Sqrt(2);

    private readonly string[] _warnings;
    internal CubicComponent[] Components { get; }
    internal AlphaKind Alpha { get; }
    internal double[] Shape { get; }
    internal double[] AttractionAtCritical { get; }
    internal double[] Covolume { get; }
    internal double[] OneMinusKij { get; }

    /// <param name="substances">Components.</param>
    /// <param name="components">Their cubic constants.</param>
    /// <param name="kij">Interaction parameters, row-major, symmetric.</param>
    /// <param name="alpha">Alpha function.</param>
    /// <param name="warnings">What to tell the person about estimated pairs.</param>
    public PengRobinsonModel(IReadOnlyList<Substance> substances, IReadOnlyList<CubicComponent> components, double[] kij, AlphaKind alpha,
        IReadOnlyList<string> warnings)
    {
        int n = substances.Count;
        if (components.Count != n || kij.Length != n * n) throw new ArgumentException($"{n} substances need {n} components and {n * n} kij, got {components.Count} and {kij.Length}");
        Substances = substances;
        Components = components.ToArray();
        Alpha = alpha;
        _warnings = warnings.ToArray();
        double r = GasConstant;
        Shape = Components.Select(c => AlphaFunction.Shape(alpha, c.AcentricFactor)).ToArray();
        AttractionAtCritical = Components.Select(c => OmegaA * r * r * c.CriticalTemperatureK * c.CriticalTemperatureK / c.CriticalPressurePa).ToArray();
        Covolume = Components.Select(c => OmegaB * r * c.CriticalTemperatureK / c.CriticalPressurePa).ToArray();
        OneMinusKij = kij.Select(k => 1 - k).ToArray();
    }

    /// <inheritdoc/>
    public override string Name => "cubic";
    /// <inheritdoc/>
    public override IReadOnlyList<Substance> Substances { get; }
    /// <inheritdoc/>
    public override double GasConstant => Fluids.Substances.GasConstant.Mixture;
    /// <inheritdoc/>
    public override IReadOnlyList<string> ContributionNames { get; } = ["translation", "repulsion", "attraction"];
    /// <inheritdoc/>
    public override IReadOnlyList<string> Warnings => _warnings;
    /// <inheritdoc/>
    public override PhaseEvaluation CreateEvaluation() => new PengRobinsonEvaluation(this);

    /// <inheritdoc/>
    public override void Contributions<T>(T temperatureK, T molarDensity, ReadOnlySpan<T> x, Span<T> parts)
    {
        T b = T.From(0), c = T.From(0), a = T.From(0), one = T.From(1);
        Span<T> root = new T[Count];
        for (int i = 0; i < Count; i++)
        {
            b += Covolume[i] * x[i];
            c += Components[i].Translation * x[i];
            root[i] = T.Pow(AttractionAtCritical[i] * AlphaFunction.Evaluate(Alpha, Shape[i], (1 / Components[i].CriticalTemperatureK) * temperatureK), 0.5);
        }
        for (int i = 0; i < Count; i++)
            for (int j = 0; j < Count; j++)
                a += OneMinusKij[i * Count + j] * (x[i] * x[j] * root[i] * root[j]);
        var shifted = one + c * molarDensity;
        var rho = molarDensity / shifted;
        parts[0] = -T.Log(shifted);
        parts[1] = -T.Log(one - b * rho);
        parts[2] = -(a / (2 * Math.Sqrt(2) * GasConstant * (b * temperatureK))) * T.Log((one + Delta1 * (b * rho)) / (one + Delta2 * (b * rho)));
    }
}
