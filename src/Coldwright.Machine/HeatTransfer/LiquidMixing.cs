using Coldwright.Machine.Flow;

namespace Coldwright.Machine.HeatTransfer;

/// <summary>What the in-tube correlations ask of one liquid.</summary>
/// <param name="Density">kg/m3.</param>
/// <param name="Viscosity">Pa s.</param>
/// <param name="Conductivity">W/(m K).</param>
/// <param name="HeatCapacity">J/(kg K).</param>
/// <param name="SurfaceTension">N/m against the vapour.</param>
public readonly record struct LiquidProperties(
    double Density, double Viscosity, double Conductivity, double HeatCapacity, double SurfaceTension);

/// <summary>
/// Two liquids flowing together, treated as one. Cold N2-hydrocarbon mixtures split in two over part of the recuperator; no
/// published heat transfer or friction data for that were found, so this is a rule of ours with a stated band.
/// </summary>
public static class LiquidMixing
{
    /// <summary>Half-width of the band of volume shares about 1/2 in which either liquid may be the continuous one.</summary>
    public const double InversionHalfWidth = 0.1;

    /// <summary>Uncertainty of <see cref="Combine"/>, to be added in quadrature to that of the correlation it feeds.</summary>
    public static Correlation CombineCorrelation { get; } = new(
        "Two liquids as one: volume-weighted, viscosity of the continuous liquid",
        "our own rule; no measurement found",
        0.20,
        "any two liquids, well stirred");

    /// <summary>
    /// Density: total mass over total volume. Conductivity and surface tension: weighted by volume. Heat capacity: by mass. Viscosity:
    /// the liquid of the larger volume share; between 40 and 60 % by volume, smoothly (in the logarithm) from one to the other.
    /// </summary>
    /// <param name="first">One liquid.</param>
    /// <param name="second">The other.</param>
    /// <param name="firstMassFraction">Mass of the first over mass of both, 0 to 1.</param>
    /// <returns>The effective liquid; equal to the only liquid at 0 and 1.</returns>
    /// <remarks>Source: ours. Droplets of the other liquid, which would raise the viscosity (Einstein, Taylor), are not credited.</remarks>
    public static LiquidProperties Combine(in LiquidProperties first, in LiquidProperties second, double firstMassFraction)
    {
        FlowGuard.Fraction(firstMassFraction, nameof(firstMassFraction));
        Check(first, nameof(first));
        Check(second, nameof(second));
        double w = firstMassFraction;
        double volume = (w / first.Density) + ((1 - w) / second.Density);
        double share = w / first.Density / volume;
        double s = Math.Clamp((share - (0.5 - InversionHalfWidth)) / (2 * InversionHalfWidth), 0, 1);
        double continuity = s * s * (3 - (2 * s));
        return new LiquidProperties(
            1 / volume,
            Math.Pow(first.Viscosity, continuity) * Math.Pow(second.Viscosity, 1 - continuity),
            (share * first.Conductivity) + ((1 - share) * second.Conductivity),
            (w * first.HeatCapacity) + ((1 - w) * second.HeatCapacity),
            (share * first.SurfaceTension) + ((1 - share) * second.SurfaceTension));
    }

    private static void Check(in LiquidProperties liquid, string name)
    {
        FlowGuard.Positive(liquid.Density, name + ".Density", "kg/m3");
        FlowGuard.Positive(liquid.Viscosity, name + ".Viscosity", "Pa s");
        FlowGuard.Positive(liquid.Conductivity, name + ".Conductivity", "W/(m K)");
        FlowGuard.Positive(liquid.HeatCapacity, name + ".HeatCapacity", "J/(kg K)");
    }
}
