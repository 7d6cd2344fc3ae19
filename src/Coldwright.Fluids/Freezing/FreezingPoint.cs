namespace Coldwright.Fluids.Freezing;

/// <summary>Where a component begins to freeze on cooling along an isobar.</summary>
/// <param name="Component">Canonical name.</param>
/// <param name="TemperatureK">K.</param>
/// <param name="PressurePa">Pa.</param>
public sealed record FreezingPoint(string Component, double TemperatureK, double PressurePa);

/// <summary>A place on a path and the component nearest to freezing there.</summary>
/// <param name="Component">Canonical name.</param>
/// <param name="Place">Index of the point on the path, from 0; between two points a fraction.</param>
/// <param name="TemperatureK">K.</param>
/// <param name="PressurePa">Pa.</param>
/// <param name="Margin">See <see cref="FreezingMargin.Margin"/>.</param>
public sealed record PathPoint(string Component, double Place, double TemperatureK, double PressurePa, double Margin);

/// <summary>Freezing along a path.</summary>
/// <param name="First">The first place along the path at which a component freezes; null when none does.</param>
/// <param name="Least">The least margin met; null when every component stays above its triple point or has no data.</param>
/// <param name="Warnings">What was not checked, and why.</param>
public sealed record PathFreezing(PathPoint? First, PathPoint? Least, IReadOnlyList<string> Warnings);
