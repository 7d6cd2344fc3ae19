namespace Coldwright.Materials.Solids;

/// <summary>One figure of one solid (thermal conductivity, specific heat, resistivity) as a function of temperature over one range.</summary>
public abstract class PropertyCurve
{
    /// <summary>Lower end of the range, K.</summary>
    public double MinimumK { get; }

    /// <summary>Upper end of the range, K.</summary>
    public double MaximumK { get; }

    /// <param name="minimumK">Lower end of the range, K; above 0.</param>
    /// <param name="maximumK">Upper end of the range, K; above the lower end.</param>
    protected PropertyCurve(double minimumK, double maximumK)
    {
        if (!(minimumK > 0 && maximumK > minimumK))
            throw new ArgumentException($"the range of a curve must rise from above 0 K, got {minimumK} K to {maximumK} K");
        MinimumK = minimumK;
        MaximumK = maximumK;
    }

    /// <summary>The figure, in the SI unit of the property: W/(m K), J/(kg K), ohm m.</summary>
    /// <param name="temperatureK">Temperature, K, inside the range.</param>
    public abstract double At(double temperatureK);
}
