using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Precooling;

/// <summary>Condenser in room air. Own input record, SI.</summary>
public sealed record AirCondenser
{
    // dry air: molar mass of the US Standard Atmosphere 1976, heat capacity 1006 J/(kg K) near 300 K (textbook value)
    private const double MolarMass = 0.0289644, GasConstant = 8.314462618, HeatCapacity = 1006, Atmosphere = 101325;

    /// <summary>Conductance with condensing refrigerant along the whole of it, refrigerant to air, W/K, 0.1 to 1e5.</summary>
    public required double ConductanceWPerK { get; init; }
    /// <summary>Air through it, m3/s at room temperature, 1e-4 to 100; null: air at room temperature everywhere (still air, or a conductance measured against the room).</summary>
    public double? AirFlowM3PerS { get; init; }
    /// <summary>Conductance of a part that holds only gas, over that of the same part condensing, 0.02 to 1; 0.6: common practice, the air side prevails.</summary>
    public double GasShare { get; init; } = 0.6;
    /// <summary>As <see cref="GasShare"/> for a part that holds only liquid.</summary>
    public double LiquidShare { get; init; } = 0.6;
    /// <summary>Subcooling of the liquid below its bubble point that the charge holds, K, 0 to 40.</summary>
    public double SubcoolingK { get; init; } = 5;
    /// <summary>Electrical power of its fan while the compressor runs, W, 0 to 1e4.</summary>
    public double FanPowerW { get; init; }
    /// <summary>One standard deviation of the conductance, relative, 0 to 1; 0.2: common practice for an estimate.</summary>
    public double RelativeUncertainty { get; init; } = 0.2;

    /// <summary>Capacity rate of the air, W/K; null without a flow.</summary>
    /// <param name="roomK">K.</param>
    public double? AirCapacityWPerK(double roomK) => AirFlowM3PerS * (Atmosphere * MolarMass / (GasConstant * roomK) * HeatCapacity);

    /// <summary>
    /// What each share of the whole area conducts against air that enters at room temperature everywhere: C (1 - exp(-UA/C)),
    /// cross-flow with the refrigerant mixed in its tube (W. M. Kays, A. L. London, Compact Heat Exchangers; from memory).
    /// </summary>
    internal double Effective(double share, double roomK)
    {
        double ua = share * ConductanceWPerK;
        return AirCapacityWPerK(roomK) is { } c ? -c * Math.Exp(-ua / c) + c : ua;
    }

    internal void Check()
    {
        InputCheck.Within(ConductanceWPerK, 0.1, 1e5, "W/K", $"condenser {nameof(ConductanceWPerK)}");
        InputCheck.Optional(AirFlowM3PerS, 1e-4, 100, "m3/s", nameof(AirFlowM3PerS));
        InputCheck.Within(GasShare, 0.02, 1, "", nameof(GasShare));
        InputCheck.Within(LiquidShare, 0.02, 1, "", nameof(LiquidShare));
        InputCheck.Within(SubcoolingK, 0, 40, "K", nameof(SubcoolingK));
        InputCheck.Within(FanPowerW, 0, 1e4, "W", nameof(FanPowerW));
        InputCheck.Within(RelativeUncertainty, 0, 1, "", $"condenser {nameof(RelativeUncertainty)}");
    }
}
