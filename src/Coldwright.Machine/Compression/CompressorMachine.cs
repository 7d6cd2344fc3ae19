namespace Coldwright.Machine.Compression;

/// <summary>A compressor as bought: displacement, motor, shell. Own input record of the part, SI; everything the model needs but the duty.</summary>
public sealed record CompressorMachine
{
    /// <summary>Lumped parameters; start from <see cref="CompressorTraits.For"/>.</summary>
    public required CompressorTraits Traits { get; init; }
    /// <summary>Swept volume per revolution, m3, 1e-7 (0.1 cm3) to 1e-2.</summary>
    public required double DisplacementM3 { get; init; }
    /// <summary>Supply frequency, Hz, 10..400.</summary>
    public double SupplyFrequencyHz { get; init; } = 50;
    /// <summary>Motor poles, even, 2..12.</summary>
    public int Poles { get; init; } = 2;
    /// <summary>Shaft speed, rev/s, 5..300, when an inverter holds it; null: synchronous speed less slip.</summary>
    public double? ShaftSpeedRevPerS { get; init; }
    /// <summary>Rated shaft power of the motor, W, 5..1e5; null: from the displacement by <see cref="CompressorTraits.RatedEffectivePressurePa"/>.</summary>
    public double? RatedShaftPowerW { get; init; }
    /// <summary>Single-phase supply voltage, V, 50..700; null leaves the current out.</summary>
    public double? SupplyVoltageV { get; init; }
    /// <summary>Power factor, 0.3..1; 0.9 for a motor with a run capacitor: our assumption.</summary>
    public double PowerFactor { get; init; } = 0.9;
    /// <summary>Heat from the shell to the room.</summary>
    public ShellCooling Cooling { get; init; } = new();
    /// <summary>Limits of this machine; null: the usual ones of its kind.</summary>
    public CompressorLimits? Limits { get; init; }

    /// <summary>Speed without slip, rev/s: 2 f/poles, or the held speed.</summary>
    public double SynchronousSpeedRevPerS => ShaftSpeedRevPerS ?? 2 * SupplyFrequencyHz / Poles;
    /// <summary>Rated shaft power, given or estimated, W.</summary>
    public double MotorRatingW => RatedShaftPowerW ?? Traits.RatedEffectivePressurePa * DisplacementM3 * SynchronousSpeedRevPerS;
    /// <summary>Shell area, given or estimated, m2.</summary>
    public double ShellAreaM2 => Cooling.AreaM2 ?? Traits.ShellAreaFactor * LengthSquaredM2;

    /// <summary>Displacement^(2/3), m2: what areas scale with.</summary>
    internal double LengthSquaredM2 => Math.Pow(DisplacementM3, 2.0 / 3);

    internal void Check()
    {
        Traits.Check();
        Cooling.Check();
        Limits?.Check();
        InputCheck.Within(DisplacementM3, 1e-7, 1e-2, "m3", nameof(DisplacementM3));
        InputCheck.Within(SupplyFrequencyHz, 10, 400, "Hz", nameof(SupplyFrequencyHz));
        InputCheck.Within(Poles, 2, 12, "", nameof(Poles));
        if (Poles % 2 != 0) throw new ArgumentException($"{nameof(Poles)} is {Poles}; it must be even", nameof(Poles));
        InputCheck.Optional(ShaftSpeedRevPerS, 5, 300, "rev/s", nameof(ShaftSpeedRevPerS));
        InputCheck.Optional(RatedShaftPowerW, 5, 1e5, "W", nameof(RatedShaftPowerW));
        InputCheck.Optional(SupplyVoltageV, 50, 700, "V", nameof(SupplyVoltageV));
        InputCheck.Within(PowerFactor, 0.3, 1, "", nameof(PowerFactor));
    }
}

/// <summary>Where a compressor works. SI, pressures absolute.</summary>
public sealed record CompressorDuty
{
    /// <summary>At the suction port, K, 60..500.</summary>
    public required double SuctionTemperatureK { get; init; }
    /// <summary>At the suction port, Pa absolute, 1e3..1e8.</summary>
    public required double SuctionPressurePa { get; init; }
    /// <summary>At the discharge port, Pa absolute, above the suction.</summary>
    public required double DischargePressurePa { get; init; }
    /// <summary>Room air around the shell, K, 230..350.</summary>
    public double RoomTemperatureK { get; init; } = 298.15;

    internal void Check()
    {
        InputCheck.Within(SuctionTemperatureK, 60, 500, "K", nameof(SuctionTemperatureK));
        InputCheck.Within(SuctionPressurePa, 1e3, 1e8, "Pa", nameof(SuctionPressurePa));
        InputCheck.Within(DischargePressurePa, 1e3, 1e8, "Pa", nameof(DischargePressurePa));
        InputCheck.Order(SuctionPressurePa, nameof(SuctionPressurePa), DischargePressurePa, nameof(DischargePressurePa), "Pa");
        InputCheck.Within(RoomTemperatureK, 230, 350, "K", nameof(RoomTemperatureK));
    }
}
