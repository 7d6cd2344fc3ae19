namespace Coldwright.Machine.ColdVessel;

/// <summary>One cell of the profile, at its middle.</summary>
/// <param name="PositionM">Distance along the tube from where the mixture enters, m.</param>
/// <param name="HeightM">Height of the tube's axis above the lowest point of the vessel, m.</param>
/// <param name="Zone">What the content does there.</param>
/// <param name="MixtureK">K; the cell's mean by the logarithmic mean difference.</param>
/// <param name="WallK">Outer surface (at the solder for a coil around the vessel), K.</param>
/// <param name="ContentK">Bubble point, liquid or dense fluid, K.</param>
/// <param name="HeatPerLength">Into the mixture, W/m.</param>
/// <param name="InsideFilm">In the tube, W/(m2 K).</param>
/// <param name="OutsideFilm">At the content, W/(m2 K).</param>
/// <param name="ConductancePerLength">Content to mixture, W/(m K).</param>
/// <param name="PressurePa">Mixture, Pa.</param>
/// <param name="Quality">Mixture, vapour mass fraction.</param>
/// <param name="Phases">Mixture, in words.</param>
public sealed record CoilStation(double PositionM, double HeightM, CoilZone Zone, double MixtureK, double WallK, double ContentK, double HeatPerLength,
    double InsideFilm, double OutsideFilm, double ConductancePerLength, double PressurePa, double Quality, string Phases);
