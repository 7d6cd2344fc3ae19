namespace Coldwright.Machine.Description;

/// <summary>kind <c>relief</c>: relief valve or burst disc.</summary>
public sealed record ReliefPart : Part
{
    /// <summary>Opening pressure, Pa absolute.</summary>
    public required double SetPressurePa { get; init; }
}
