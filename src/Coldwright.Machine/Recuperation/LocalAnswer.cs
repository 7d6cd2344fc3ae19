namespace Coldwright.Machine.Recuperation;

/// <summary>What one stream does at one place.</summary>
/// <param name="Film">Film coefficient, W/(m2 K).</param>
/// <param name="FilmUncertainty">One standard deviation, relative.</param>
/// <param name="FrictionGradient">Pa/m, positive in the direction of flow.</param>
/// <param name="FrictionUncertainty">One standard deviation, relative.</param>
/// <param name="MomentumFlux">Pa.</param>
/// <param name="MeanDensity">Mass per volume of the passage, slip included, kg/m3.</param>
internal readonly record struct LocalAnswer(double Film, double FilmUncertainty, double FrictionGradient, double FrictionUncertainty, double MomentumFlux, double MeanDensity);
