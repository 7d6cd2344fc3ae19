namespace Coldwright.Fluids.EquationsOfState;

/// <summary>The documented limits of the admissible-root rule (docs/theory/density-roots.md).</summary>
public static class DensityRule
{
    /// <summary>
    /// Roots are sought up to this multiple of 1/(sum x_i v_i), v_i the liquid molar volumes at the triple points.
    /// Liquids far below a component's triple point are a few per cent denser than that sum; compressed liquid at
    /// 80 bar adds less than 2 %.
    /// </summary>
    public const double LimitFactor = 1.35;

    /// <summary>
    /// The dense branch must be found (stable and above the pressure) between this share of the limit and the limit,
    /// that is above the triple-point liquid density sum. A stretch that is stable only below it lies between two
    /// loops of an equation far outside its range and is not a liquid.
    /// </summary>
    public const double LowestDenseStart = 0.75;
}
