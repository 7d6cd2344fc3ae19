namespace Coldwright.Materials.Solids;

/// <summary>Thermal conductivity, W/(m K), of one solid as a function of temperature over one range.</summary>
public abstract class ConductivityCurve
{
    /// <summary>Lower end of the range, K.</summary>
    public double MinimumK { get; }

    /// <summary>Upper end of the range, K.</summary>
    public double MaximumK { get; }

    /// <param name="minimumK">Lower end of the range, K; above 0.</param>
    /// <param name="maximumK">Upper end of the range, K; above the lower end.</param>
    protected ConductivityCurve(double minimumK, double maximumK)
    {
        if (!(minimumK > 0 && maximumK > minimumK))
            throw new ArgumentException($"a conductivity range must rise from above 0 K, got {minimumK} K to {maximumK} K");
        MinimumK = minimumK;
        MaximumK = maximumK;
    }

    /// <summary>Conductivity, W/(m K).</summary>
    /// <param name="temperatureK">Temperature, K, inside the range.</param>
    public abstract double At(double temperatureK);
}
