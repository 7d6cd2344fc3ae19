namespace Coldwright.Machine.Description;

/// <summary>What cools the shell of a feed compressor.</summary>
public enum FeedCooling
{
    /// <summary>Still room air.</summary>
    StillAir,
    /// <summary>A fan that blows on it.</summary>
    Fan,
    /// <summary>It stands in water at the temperature of the room.</summary>
    WaterBath,
}

/// <summary>How oil reaches the bearings of a feed compressor.</summary>
public enum FeedLubrication
{
    /// <summary>A pump in the shaft lifts it from a sump.</summary>
    Pump,
    /// <summary>A splasher throws it about.</summary>
    Splash,
    /// <summary>No sump of its own: oil came with the refrigerant it was built for.</summary>
    DrySump,
}

/// <summary>Key <c>compressor</c> of a feed: the machine that pumps the product gas. SI.</summary>
public sealed record FeedCompressorDescription
{
    /// <summary>rotary or reciprocating.</summary>
    public required CompressorType Type { get; init; }
    /// <summary>Swept volume per revolution, m3, 1e-7..1e-2.</summary>
    public required double DisplacementM3 { get; init; }
    /// <summary>Shaft speed, rev/s.</summary>
    public required double SpeedRevPerS { get; init; }
    /// <summary>Clearance over swept volume, 0..0.3; null: the usual one of its kind.</summary>
    public double? ClearanceFraction { get; init; }
    /// <summary>What cools its shell.</summary>
    public FeedCooling Cooling { get; init; } = FeedCooling.StillAir;
    /// <summary>Measured conductance from shell to room or bath, W/K; null: estimated.</summary>
    public double? ShellConductanceWPerK { get; init; }
    /// <summary>Mass of shell, motor and pump, kg; null: estimated from the displacement.</summary>
    public double? MassKg { get; init; }
    /// <summary>Hottest discharge allowed, K; null: the usual one.</summary>
    public double? MaximumDischargeTemperatureK { get; init; }
    /// <summary>Hottest shell allowed, K; null: the usual one.</summary>
    public double? MaximumShellTemperatureK { get; init; }
    /// <summary>How oil reaches its bearings; null when not said.</summary>
    public FeedLubrication? Lubrication { get; init; }
    /// <summary>Lowest speed at which its oil pump or splasher works, rev/s; null when not known.</summary>
    public double? LowestSpeedRevPerS { get; init; }
    /// <summary>Oil in it, kg; null when not known.</summary>
    public double? OilChargeKg { get; init; }
}
