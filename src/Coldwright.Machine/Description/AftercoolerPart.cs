namespace Coldwright.Machine.Description;

/// <summary>kind <c>aftercooler</c>: cools the discharge to near room air.</summary>
public sealed record AftercoolerPart : Part
{
    /// <summary>Outlet temperature minus room air, K.</summary>
    public required double ApproachK { get; init; }
    /// <summary>Pressure drop, Pa.</summary>
    public double PressureDropPa { get; init; }
    /// <summary>Fan power, W electrical.</summary>
    public double FanPowerW { get; init; }
    /// <summary>Volume of its passages, m3; null when not known.</summary>
    public double? GasVolumeM3 { get; init; }
}
