namespace Coldwright.Machine.Description;

/// <summary>kind <c>precooler</c>: second loop that takes the high-pressure stream to a given temperature.</summary>
public sealed record PrecoolerPart : Part
{
    /// <summary>Temperature at which the high-pressure stream leaves, K.</summary>
    public required double OutletTemperatureK { get; init; }
    /// <summary>Evaporating temperature below the outlet temperature by this, K.</summary>
    public required double EvaporatorDifferenceK { get; init; }
    /// <summary>Condensing temperature above room air by this, K.</summary>
    public required double CondenserDifferenceK { get; init; }
    /// <summary>Cooling over electrical input as a share of Carnot between the two, 0..1.</summary>
    public required double CarnotShare { get; init; }
    /// <summary>Cooling capacity available at that temperature, W; null when not known.</summary>
    public double? CapacityW { get; init; }
    /// <summary>Fan power, W electrical.</summary>
    public double FanPowerW { get; init; }
    /// <summary>Volume of the mixture's passage, m3; null when not known.</summary>
    public double? GasVolumeM3 { get; init; }
    /// <summary>The loop itself, for the model that works its temperatures out; null when only the temperatures above are given.</summary>
    public PrecoolerLoopDescription? Loop { get; init; }
}
