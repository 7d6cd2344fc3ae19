namespace Coldwright.Machine.Recuperation;

/// <summary>What one stream does at one place of its passage, as marches in time need it.</summary>
/// <param name="Film">Film coefficient, W/(m2 K).</param>
/// <param name="FrictionGradient">Pa/m, positive in the direction of flow.</param>
/// <param name="MomentumFlux">Pa.</param>
/// <param name="MolarDensity">Held per volume of the passage, slip included, mol/m3.</param>
internal readonly record struct PassageAnswer(double Film, double FrictionGradient, double MomentumFlux, double MolarDensity);
