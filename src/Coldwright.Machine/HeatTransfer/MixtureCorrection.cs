using Coldwright.Machine.Flow;

namespace Coldwright.Machine.HeatTransfer;

/// <summary>
/// What a temperature glide costs: the vapour of a mixture must be cooled or heated along with the film, and its poor coefficient
/// stands in series with the film's.
/// </summary>
public static class MixtureCorrection
{
    /// <summary>Source and uncertainty of <see cref="SilverBellGhaly"/>.</summary>
    public static Correlation SilverBellGhalyCorrelation { get; } = new(
        "Silver (1947), Bell-Ghaly (1973) mixture correction",
        "L. Silver, Trans. Inst. Chem. Eng. 25, 1947, 30-42; K. J. Bell, M. A. Ghaly, AIChE Symp. Ser. 69(131), 1973, 72-79; uncertainty: our assumption",
        0.20,
        "condensing mixtures at equilibrium; for boiling an analogy without a stated range");

    /// <summary>1/h = 1/h_film + Z/h_V.</summary>
    /// <param name="film">Coefficient of the film as if the fluid were pure, W/(m2 K), above 0.</param>
    /// <param name="vapourOnly">Coefficient of the vapour flowing alone at its own flow x G, W/(m2 K), above 0.</param>
    /// <param name="sensibleShare">Z, from <see cref="SensibleShare"/>, at least 0.</param>
    /// <returns>W/(m2 K); the film's at Z = 0. One standard deviation 20 %, on the safe (low) side for condensation.</returns>
    /// <remarks>Sources: Silver (1947); Bell and Ghaly (1973). Interface roughness is not credited.</remarks>
    public static double SilverBellGhaly(double film, double vapourOnly, double sensibleShare)
    {
        FlowGuard.Positive(film, nameof(film), "W/(m2 K)");
        FlowGuard.NotNegative(sensibleShare, nameof(sensibleShare), "(dimensionless)");
        if (sensibleShare == 0)
        {
            return film;
        }

        FlowGuard.Positive(vapourOnly, nameof(vapourOnly), "W/(m2 K)");
        return 1 / ((1 / film) + (sensibleShare / vapourOnly));
    }

    /// <summary>Share of the heat that is sensible heat of the vapour: Z = x cpV dT/dh, along the equilibrium curve at constant pressure.</summary>
    /// <param name="quality">Vapour mass fraction, 0 to 1.</param>
    /// <param name="vapourHeatCapacity">J/(kg K).</param>
    /// <param name="temperaturePerEnthalpy">dT/dh of the whole flow, K kg/J; 0 for a pure fluid, at least 0.</param>
    /// <returns>Dimensionless, 0 to 1 (held within).</returns>
    public static double SensibleShare(double quality, double vapourHeatCapacity, double temperaturePerEnthalpy)
    {
        FlowGuard.Fraction(quality, nameof(quality));
        FlowGuard.Positive(vapourHeatCapacity, nameof(vapourHeatCapacity), "J/(kg K)");
        // A slightly negative slope is rounding on a pure fluid's plateau; more than 1 would mean that the vapour takes more than all the heat.
        return double.IsNaN(temperaturePerEnthalpy)
            ? throw new ArgumentException("temperaturePerEnthalpy is not a number; it must be at least 0 K kg/J", nameof(temperaturePerEnthalpy))
            : Math.Clamp(quality * vapourHeatCapacity * temperaturePerEnthalpy, 0, 1);
    }
}
