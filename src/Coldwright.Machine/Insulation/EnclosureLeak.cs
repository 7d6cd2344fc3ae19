using Coldwright.Quantities;

namespace Coldwright.Machine.Insulation;

/// <summary>Heat by one way.</summary>
/// <param name="Name">What conducts.</param>
/// <param name="PowerW">Heat flow inwards, W.</param>
/// <param name="DeviationW">One standard deviation of it from the materials, W.</param>
public sealed record LeakPath(string Name, double PowerW, double DeviationW);

/// <summary>One layer in the solved wall.</summary>
/// <param name="Name">Layer.</param>
/// <param name="InnerDepthM">Depth of its inner surface, m.</param>
/// <param name="OuterDepthM">Depth of its outer surface, m.</param>
/// <param name="ShapeFactorM">Its shape factor, m.</param>
/// <param name="InnerK">Temperature of its inner surface, K.</param>
/// <param name="OuterK">Temperature of its outer surface, K.</param>
/// <param name="ShareOfResistance">Its share of the temperature difference between inside and room, 0 to 1.</param>
public sealed record LayerResult(string Name, double InnerDepthM, double OuterDepthM, double ShapeFactorM, double InnerK, double OuterK, double ShareOfResistance);

/// <summary>A point of the temperature profile through the wall.</summary>
/// <param name="DepthM">Depth from the inside surface, m.</param>
/// <param name="TemperatureK">Temperature, K.</param>
public readonly record struct WallPoint(double DepthM, double TemperatureK);

/// <summary>Heat leak of an enclosure at one inside temperature.</summary>
/// <param name="Paths">The wall first, then each penetration.</param>
/// <param name="InsideK">Inside temperature, K.</param>
/// <param name="OutsideSurfaceK">Temperature of the outside surface, K.</param>
/// <param name="DewPointK">Dew point of the room, K.</param>
/// <param name="Layers">Layers with their interface temperatures.</param>
/// <param name="Profile">Temperature through the wall, to draw.</param>
/// <param name="StoredHeatJ">Heat the wall has given up against a wall all at room temperature, J: what a cooldown must carry away besides the leak.</param>
/// <param name="StoredHeatComplete">False where a layer's density or specific heat is not known.</param>
/// <param name="EnergyError">Largest difference between the flows of neighbouring layers and the film, divided by the flow.</param>
/// <param name="Warnings">What a person must be told.</param>
public sealed record EnclosureLeak(
    IReadOnlyList<LeakPath> Paths, double InsideK, double OutsideSurfaceK, double DewPointK, IReadOnlyList<LayerResult> Layers, IReadOnlyList<WallPoint> Profile,
    double StoredHeatJ, bool StoredHeatComplete, double EnergyError, IReadOnlyList<Spoken> Warnings)
{
    /// <summary>Sum of all paths, W.</summary>
    public double TotalW => Paths.Sum(p => p.PowerW);

    /// <summary>One standard deviation of the sum, paths taken as independent, W.</summary>
    public double DeviationW => Math.Sqrt(Paths.Sum(p => p.DeviationW * p.DeviationW));

    /// <summary>Through the wall alone, W.</summary>
    public double WallW => Paths[0].PowerW;
}
