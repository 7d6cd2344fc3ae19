using Coldwright.Fluids.States;
using Coldwright.Quantities;

namespace Coldwright.Machine.Compression;

/// <summary>Factors whose product is the volumetric efficiency, each 0..1.</summary>
/// <param name="SuctionHeating">Density after heating in the shell over that at the port.</param>
/// <param name="SuctionThrottling">Density behind the suction port or valve over that before it.</param>
/// <param name="LeakHeating">Density with the leaked hot gas mixed in over that without.</param>
/// <param name="Clearance">1 - c (v_suction/v_discharge - 1).</param>
/// <param name="Leakage">Share of what is compressed that is delivered.</param>
public sealed record VolumetricFactors(double SuctionHeating, double SuctionThrottling, double LeakHeating, double Clearance, double Leakage)
{
    /// <summary>Volumetric efficiency.</summary>
    public double Product => SuctionHeating * SuctionThrottling * LeakHeating * Clearance * Leakage;
}

/// <summary>Where the electrical power goes, W; the parts sum to the whole.</summary>
/// <param name="IsentropicW">Delivered flow compressed isentropically from port to port.</param>
/// <param name="SuctionHeatingW">More because the gas is drawn in warmer.</param>
/// <param name="ThrottlingW">More because of the pressure lost in ports and valves.</param>
/// <param name="LeakageW">More because leaked gas is compressed again.</param>
/// <param name="FrictionW">Bearings, vane, rings, oil.</param>
/// <param name="MotorW">Copper, iron, windage.</param>
public sealed record PowerSplit(double IsentropicW, double SuctionHeatingW, double ThrottlingW, double LeakageW, double FrictionW, double MotorW)
{
    /// <summary>Electrical power, W.</summary>
    public double TotalW => IsentropicW + SuctionHeatingW + ThrottlingW + LeakageW + FrictionW + MotorW;
}

/// <summary>A compressor at work, by whichever model.</summary>
public sealed record CompressorPerformance
{
    /// <summary>Delivered, mol/s.</summary>
    public required double MolarFlow { get; init; }
    /// <summary>Delivered, kg/s.</summary>
    public required double MassFlow { get; init; }
    /// <summary>Delivered volume at suction-port density over displacement and shaft speed; null when the displacement is not known.</summary>
    public required double? VolumetricEfficiency { get; init; }
    /// <summary>Isentropic power from port to port over electrical power.</summary>
    public required double OverallIsentropicEfficiency { get; init; }
    /// <summary>Shaft over electrical power; null when the model does not split them.</summary>
    public double? MotorEfficiency { get; init; }
    /// <summary>rev/s; null when not known.</summary>
    public double? ShaftSpeedRevPerS { get; init; }
    /// <summary>W.</summary>
    public required double ElectricalPowerW { get; init; }
    /// <summary>A; null without a voltage.</summary>
    public double? CurrentA { get; init; }
    /// <summary>From the shell to the room, W.</summary>
    public required double ShellHeatW { get; init; }
    /// <summary>Mean temperature of the shell, K.</summary>
    public required double ShellTemperatureK { get; init; }
    /// <summary>State at the suction port.</summary>
    public required FluidState Suction { get; init; }
    /// <summary>State at the discharge port.</summary>
    public required FluidState Discharge { get; init; }
    /// <summary>Gas leaving the cylinder at the discharge valve, K; equal to the discharge port when the model does not know it.</summary>
    public required double ValveTemperatureK { get; init; }
    /// <summary>Volumetric losses; null when the model does not split them.</summary>
    public VolumetricFactors? Volumetric { get; init; }
    /// <summary>Power by cause; null when the model does not split it.</summary>
    public PowerSplit? Power { get; init; }
    /// <summary>To draw: port, heated, in the cylinder, end of compression, behind the valve, discharge port.</summary>
    public required IReadOnlyList<(string Place, GasPoint State)> Path { get; init; }
    /// <summary>(Electrical - flow (h_discharge - h_suction) - shell heat)/electrical.</summary>
    public required double EnergyBalanceError { get; init; }
    /// <summary>One standard deviation of the flow, relative.</summary>
    public required double FlowUncertainty { get; init; }
    /// <summary>One standard deviation of the power, relative.</summary>
    public required double PowerUncertainty { get; init; }
    /// <summary>Each limit with how near it is.</summary>
    public required IReadOnlyList<LimitFinding> Limits { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
}
