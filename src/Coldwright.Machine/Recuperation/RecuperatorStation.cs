namespace Coldwright.Machine.Recuperation;

/// <summary>One cell of the profile; temperatures, films and qualities at its middle.</summary>
/// <param name="PositionM">Distance from the warm end, m.</param>
/// <param name="HotK">Warm stream, K.</param>
/// <param name="ColdK">Cold stream, K.</param>
/// <param name="WallK">Wall, K.</param>
/// <param name="HotPhases">Phases of the warm stream, in words.</param>
/// <param name="ColdPhases">Phases of the cold stream, in words.</param>
/// <param name="HotQuality">Vapour mass fraction of the warm stream.</param>
/// <param name="ColdQuality">Vapour mass fraction of the cold stream.</param>
/// <param name="HotFilm">Film coefficient of the warm stream, W/(m2 K).</param>
/// <param name="ColdFilm">Film coefficient of the cold stream, W/(m2 K).</param>
/// <param name="ConductancePerLength">Overall, from stream to stream, W/(m K).</param>
/// <param name="HeatPerLength">From the warm stream into the wall, W/m.</param>
/// <param name="LeakPerLength">From the room, W/m.</param>
/// <param name="AxialConductionW">Through the metal towards the cold end, at the middle of the cell, W.</param>
/// <param name="HotPressurePa">Pa.</param>
/// <param name="ColdPressurePa">Pa.</param>
public sealed record RecuperatorStation(double PositionM, double HotK, double ColdK, double WallK, string HotPhases, string ColdPhases, double HotQuality, double ColdQuality,
    double HotFilm, double ColdFilm, double ConductancePerLength, double HeatPerLength, double LeakPerLength, double AxialConductionW, double HotPressurePa, double ColdPressurePa)
{
    /// <summary>Warm stream at the middle of the cell, J/mol.</summary>
    public double HotEnthalpy { get; init; }
    /// <summary>Cold stream at the middle of the cell, J/mol.</summary>
    public double ColdEnthalpy { get; init; }
}
