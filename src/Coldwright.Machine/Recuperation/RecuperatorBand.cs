namespace Coldwright.Machine.Recuperation;

/// <summary>One standard deviation of the result from the stated uncertainty of the correlations (film and friction of each side, independent of one another, each wrong by the same share all along).</summary>
/// <param name="DutyW">W.</param>
/// <param name="HotOutletK">K.</param>
/// <param name="ColdOutletK">K.</param>
/// <param name="HotDropPa">Of the warm stream's pressure drop, Pa.</param>
/// <param name="ColdDropPa">Of the cold stream's pressure drop, Pa.</param>
public sealed record RecuperatorBand(double DutyW, double HotOutletK, double ColdOutletK, double HotDropPa, double ColdDropPa);
