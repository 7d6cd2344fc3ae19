using Coldwright.Fluids.Substances;
using Coldwright.Quantities;

namespace Coldwright.Design.Blending;

/// <summary>A mixture with what it does.</summary>
public sealed record BlendChoice
{
    /// <summary>Mole fractions; gases of which there is none are left out.</summary>
    public required Composition Mixture { get; init; }
    /// <summary>By the cubic model.</summary>
    public required BlendPoint Cubic { get; init; }
    /// <summary>By the reference model; null where it was not asked.</summary>
    public BlendPoint? Reference { get; init; }
    /// <summary>Worst merit with one gas off by the filling error, of the models asked.</summary>
    public required double WorstMerit { get; init; }
    /// <summary>Mole fraction of gases that burn.</summary>
    public required double Flammable { get; init; }
    /// <summary>Price of a kilogram in the shop's currency; null where a price is not known.</summary>
    public double? PricePerKg { get; init; }

    /// <summary>The point that answers: the reference model's where there is one.</summary>
    public BlendPoint Main => Reference ?? Cubic;
}

/// <summary>What one gas's share does.</summary>
/// <param name="Gas">Canonical name.</param>
/// <param name="Fraction">mol/mol.</param>
/// <param name="MorePerCent">Change of the merit with one per cent of the molecules more of it, the others in proportion.</param>
/// <param name="LessPerCent">The same with one per cent less; null where there is not so much.</param>
/// <param name="WithoutMerit">Best merit without it, by the cubic model; null where it was not worked out.</param>
public sealed record GasSensitivity(string Gas, double Fraction, double? MorePerCent, double? LessPerCent, double? WithoutMerit);

/// <summary>What a limit costs.</summary>
/// <param name="Limit">In words.</param>
/// <param name="Unit">SI unit of its value; 1 for a share.</param>
/// <param name="Value">As it is.</param>
/// <param name="Relaxed">As it was relaxed.</param>
/// <param name="Gain">More merit then, by the cubic model.</param>
public sealed record LimitPrice(string Limit, string Unit, double Value, double? Relaxed, double Gain);

/// <summary>The mixture that gives most, and its neighbours.</summary>
public sealed record BlendResult
{
    /// <summary>What it was chosen for.</summary>
    public required BlendGoal Goal { get; init; }
    /// <summary>Load temperature, K.</summary>
    public required double TemperatureK { get; init; }
    /// <summary>High pressure, Pa absolute.</summary>
    public required double HighPressurePa { get; init; }
    /// <summary>Low pressure, Pa absolute.</summary>
    public required double LowPressurePa { get; init; }
    /// <summary>Gases that might be used.</summary>
    public required IReadOnlyList<string> Gases { get; init; }
    /// <summary>The best.</summary>
    public required BlendChoice Best { get; init; }
    /// <summary>What the file has now; the best once more where that has a gas which may not be used.</summary>
    public required BlendChoice Now { get; init; }
    /// <summary>True when the file's mixture can be compared with.</summary>
    public bool KnowsNow => !ReferenceEquals(Now, Best);
    /// <summary>The best of fewer gases, most gases first.</summary>
    public required IReadOnlyList<BlendChoice> Near { get; init; }
    /// <summary>Each gas.</summary>
    public required IReadOnlyList<GasSensitivity> Sensitivities { get; init; }
    /// <summary>What each limit that is felt costs.</summary>
    public required IReadOnlyList<LimitPrice> Prices { get; init; }
    /// <summary>Mixtures rated by the cubic model and by the reference model.</summary>
    public required (int Cubic, int Reference) Rated { get; init; }
    /// <summary>Seconds it took.</summary>
    public required double Seconds { get; init; }
    /// <summary>Seconds of processor time that the whole program took meanwhile, all threads together.</summary>
    public required double ProcessorSeconds { get; init; }
    /// <summary>What a mole fraction may be off.</summary>
    public required double FillingError { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
    /// <summary>True when it was stopped: the best so far.</summary>
    public bool Stopped { get; init; }
}
