namespace Coldwright.Machine.Description;

/// <summary>Room air and size.</summary>
public sealed record RoomDescription
{
    /// <summary>Air temperature, K.</summary>
    public required double TemperatureK { get; init; }
    /// <summary>Barometric pressure, Pa; gauge readings are turned into absolute pressures with it.</summary>
    public required double PressurePa { get; init; }
    /// <summary>Floor area, m2.</summary>
    public required double FloorAreaM2 { get; init; }
    /// <summary>Ceiling height, m.</summary>
    public required double HeightM { get; init; }
    /// <summary>Fresh-air changes per hour, 1/h.</summary>
    public double AirChangesPerHour { get; init; }
    /// <summary>Relative humidity of the air, 0..1; null when not known.</summary>
    public double? RelativeHumidity { get; init; }
    /// <summary>Room volume, m3.</summary>
    public double VolumeM3 => FloorAreaM2 * HeightM;
}
