namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>A vapour and a liquid from which a flash may begin (<see cref="Flash.TryFollowFrom"/>), overwritten as often as wanted.</summary>
/// <param name="count">Number of components.</param>
public sealed class PhaseSeed(int count)
{
    /// <summary>Mole fractions of the vapour.</summary>
    public double[] Vapour { get; } = new double[count];
    /// <summary>Mole fractions of the liquid.</summary>
    public double[] Liquid { get; } = new double[count];
    /// <summary>Moles of vapour per mole; 1: vapour alone, 0: liquid alone, and the compositions do not matter.</summary>
    public double VapourFraction { get; set; } = 1;
    /// <summary>mol/m3; not a number where unknown.</summary>
    public double VapourDensity { get; set; } = double.NaN;
    /// <summary>mol/m3; not a number where unknown.</summary>
    public double LiquidDensity { get; set; } = double.NaN;
}
