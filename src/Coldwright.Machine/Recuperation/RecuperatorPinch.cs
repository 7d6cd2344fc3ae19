namespace Coldwright.Machine.Recuperation;

/// <summary>The smallest temperature difference and where it is.</summary>
/// <param name="DifferenceK">K; negative only where heat flows backwards.</param>
/// <param name="PositionM">Distance from the warm end, m.</param>
/// <param name="HotK">K.</param>
/// <param name="ColdK">K.</param>
public sealed record RecuperatorPinch(double DifferenceK, double PositionM, double HotK, double ColdK);
