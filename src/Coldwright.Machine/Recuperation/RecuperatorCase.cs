using Coldwright.Materials.Solids;

namespace Coldwright.Machine.Recuperation;

/// <summary>One question put to the solver: everything fixed. The four numbers of standard deviations shift the correlations when a band is worked out.</summary>
internal sealed record RecuperatorCase(RecuperatorGeometry Geometry, SolidMaterial Wall, RoomLeak? Leak, StreamInlet Hot, StreamInlet Cold, RecuperatorOptions Options)
{
    public double HotFilmSigma { get; init; }
    public double ColdFilmSigma { get; init; }
    public double HotFrictionSigma { get; init; }
    public double ColdFrictionSigma { get; init; }

    /// <summary>True when the first stream really enters as the warmer one; else it boils and the other condenses.</summary>
    public bool HotIsWarmer => Hot.TemperatureK >= Cold.TemperatureK;
}
