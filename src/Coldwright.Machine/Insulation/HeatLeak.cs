namespace Coldwright.Machine.Insulation;

/// <summary>Where heat from the room arrives.</summary>
public enum LeakEnd
{
    /// <summary>At the cold end: it loads the coil at the cold temperature.</summary>
    Cold,

    /// <summary>At the recuperator's warm end: it warms the streams there and costs no cold-end watts.</summary>
    Warm,
}

/// <summary>One way for heat into the box.</summary>
/// <param name="Name">What conducts: <c>insulation</c>, <c>tube FROM to TO</c> or <c>penetration N MATERIAL</c>.</param>
/// <param name="PowerW">Heat flow inwards, W.</param>
/// <param name="End">Where it arrives.</param>
public sealed record HeatLeakPath(string Name, double PowerW, LeakEnd End);

/// <summary>Heat leak of the cold box at one pair of temperatures.</summary>
/// <param name="Paths">Every path with its watts.</param>
/// <param name="OutsideSurfaceTemperatureK">Mean temperature of the box's outside, K; below the room's dew point it sweats.</param>
/// <param name="Warnings">Conductivities used outside their range or taken from memory, geometry outside its rule.</param>
public sealed record HeatLeak(IReadOnlyList<HeatLeakPath> Paths, double OutsideSurfaceTemperatureK, IReadOnlyList<string> Warnings)
{
    /// <summary>Sum of the paths that load the cold end, W.</summary>
    public double ColdEndW => Paths.Where(p => p.End == LeakEnd.Cold).Sum(p => p.PowerW);

    /// <summary>Sum of the paths that end at the recuperator's warm end, W.</summary>
    public double WarmEndW => Paths.Where(p => p.End == LeakEnd.Warm).Sum(p => p.PowerW);
}
