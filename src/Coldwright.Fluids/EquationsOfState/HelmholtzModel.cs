using Coldwright.Fluids.Substances;
using Coldwright.Numerics.Scalars;

namespace Coldwright.Fluids.EquationsOfState;

/// <summary>
/// The one thing a fluid model supplies: the residual Helmholtz energy alphar = a_residual/(R T) as a sum of named
/// contributions, written once for any scalar type. Everything else is derived from it, here or in
/// <see cref="PhaseEvaluation"/> (its hand-written derivatives are tested against this generic text).
/// </summary>
public abstract class HelmholtzModel
{
    /// <summary>Model name: <c>reference</c> or <c>cubic</c>.</summary>
    public abstract string Name { get; }

    /// <summary>Components in order.</summary>
    public abstract IReadOnlyList<Substance> Substances { get; }

    /// <summary>Number of components.</summary>
    public int Count => Substances.Count;

    /// <summary>Gas constant, J/(mol K), see <see cref="Substances.GasConstant"/>.</summary>
    public abstract double GasConstant { get; }

    /// <summary>Names of the contributions, in the order of <see cref="Contributions{T}"/>.</summary>
    public abstract IReadOnlyList<string> ContributionNames { get; }

    /// <summary>The contributions to alphar (dimensionless).</summary>
    /// <param name="temperatureK">Temperature, K.</param>
    /// <param name="molarDensity">Molar density, mol/m3.</param>
    /// <param name="x">Mole fractions, length <see cref="Count"/>; need not be normalised exactly.</param>
    /// <param name="parts">Receives one value per contribution.</param>
    public abstract void Contributions<T>(T temperatureK, T molarDensity, ReadOnlySpan<T> x, Span<T> parts) where T : struct, IScalar<T>;

    /// <summary>alphar, the sum of the contributions.</summary>
    public T ResidualHelmholtz<T>(T temperatureK, T molarDensity, ReadOnlySpan<T> x) where T : struct, IScalar<T>
    {
        Span<T> parts = new T[ContributionNames.Count];
        Contributions(temperatureK, molarDensity, x, parts);
        var sum = T.From(0);
        foreach (var part in parts) sum += part;
        return sum;
    }

    /// <summary>A work object for the hot path; one per thread, reused without allocation.</summary>
    public abstract PhaseEvaluation CreateEvaluation();

    /// <summary>What a person must be told about this model's parameters (estimated or absent pairs).</summary>
    public abstract IReadOnlyList<string> Warnings { get; }
}
