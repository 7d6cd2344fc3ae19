namespace Coldwright.Machine.Description;

/// <summary>kind <c>warm-exchanger</c>: counterflow exchanger ahead of the precooler.</summary>
public sealed record WarmExchangerPart : Part
{
    /// <summary>Overall conductance UA, W/K.</summary>
    public required double ConductanceWPerK { get; init; }
    /// <summary>Volume of both its passages, m3; null when not known.</summary>
    public double? GasVolumeM3 { get; init; }
}
