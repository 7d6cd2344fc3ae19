using Coldwright.Fluids.States;

namespace Coldwright.Fluids.Freezing;

/// <summary>What could be said about a component.</summary>
public enum FreezingStatus
{
    /// <summary>The margin was worked out.</summary>
    Calculated,
    /// <summary>The temperature is above its triple point: it has no stable solid.</summary>
    AboveTriplePoint,
    /// <summary>It is below its triple point, but there are no data of its solid: freezing is not excluded.</summary>
    NoData,
    /// <summary>Its amount is zero.</summary>
    Absent,
}

/// <summary>Solubility of a component in one liquid.</summary>
/// <param name="Kind">Which phase.</param>
/// <param name="Actual">Mole fraction there.</param>
/// <param name="Solubility">
/// Mole fraction at which its solid would appear, the others kept in proportion and the phase kept one phase; null when no
/// mole fraction below 1 does.
/// </param>
public sealed record PhaseSolubility(PhaseKind Kind, double Actual, double? Solubility)
{
    /// <summary>Solubility over actual mole fraction; null without a solubility.</summary>
    public double? Margin => Solubility / Actual;
}

/// <summary>How far a component is from freezing out of a state.</summary>
public sealed record FreezingMargin
{
    /// <summary>Canonical name.</summary>
    public required string Component { get; init; }
    /// <summary>What could be said.</summary>
    public required FreezingStatus Status { get; init; }
    /// <summary>
    /// Fugacity of the pure solid over the component's fugacity, the same in every phase in equilibrium: above 1 it stays
    /// dissolved, 1 is saturation, below 1 it freezes. In a dilute phase it is solubility over actual mole fraction. Null unless
    /// <see cref="Status"/> is <see cref="FreezingStatus.Calculated"/>.
    /// </summary>
    public required double? Margin { get; init; }
    /// <summary>
    /// Mole fraction in an ideal solution saturated with the solid: a yardstick free of the fluid model. Where a solution of
    /// similar substances is far from it, the model is extrapolated too far. Null unless calculated.
    /// </summary>
    public required double? IdealSolubility { get; init; }
    /// <summary>One entry per liquid phase; empty unless calculated.</summary>
    public required IReadOnlyList<PhaseSolubility> Solubilities { get; init; }
    /// <summary>
    /// Temperature at which it begins to freeze when the same mixture is cooled at the same pressure, K; null when it was
    /// not searched or not reached.
    /// </summary>
    public required double? FreezingTemperatureK { get; init; }
    /// <summary>True when it freezes at this state.</summary>
    public bool Freezes => Margin < 1;
}
