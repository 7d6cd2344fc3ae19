namespace Coldwright.Machine.Description;

/// <summary>kind <c>warm-exchanger</c>: counterflow exchanger ahead of the precooler.</summary>
public sealed record WarmExchangerPart : Part
{
    /// <summary>Overall conductance UA, W/K.</summary>
    public required double ConductanceWPerK { get; init; }
}
