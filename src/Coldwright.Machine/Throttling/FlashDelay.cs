namespace Coldwright.Machine.Throttling;

/// <summary>How the underpressure of delayed flashing is found.</summary>
public enum FlashDelayKind
{
    /// <summary>Flashing begins at the bubble point.</summary>
    None,
    /// <summary>A pressure difference given by the user.</summary>
    Underpressure,
    /// <summary>The correlation of Chen et al. (1990), <see cref="ChenUnderpressure"/>.</summary>
    Chen,
}

/// <summary>
/// Stated allowance for liquid that flashes late. The liquid stays liquid down to the bubble pressure less the underpressure; over
/// the next equal drop the excess over equilibrium dies out in proportion to the pressure. The second part is our own way of
/// returning to equilibrium without a jump. A delay always raises the flow; the default is none.
/// </summary>
/// <param name="Kind">How it is found.</param>
/// <param name="UnderpressurePa">Given underpressure, Pa, 0 to 2e6; only with <see cref="FlashDelayKind.Underpressure"/>.</param>
public sealed record FlashDelay(FlashDelayKind Kind, double UnderpressurePa = 0)
{
    private const double HighestUnderpressurePa = 2e6;

    /// <summary>Equilibrium everywhere (the default).</summary>
    public static FlashDelay None { get; } = new(FlashDelayKind.None);

    /// <summary>The correlation of Chen et al. (1990).</summary>
    public static FlashDelay Chen { get; } = new(FlashDelayKind.Chen);

    /// <summary>A given underpressure.</summary>
    /// <param name="underpressurePa">Pa, 0 to 2e6.</param>
    public static FlashDelay Of(double underpressurePa) => new(FlashDelayKind.Underpressure, underpressurePa);

    internal void Check() => ThrottleGuard.Within(UnderpressurePa, 0, HighestUnderpressurePa, nameof(UnderpressurePa), "Pa");
}
