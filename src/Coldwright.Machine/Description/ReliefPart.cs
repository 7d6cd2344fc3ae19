namespace Coldwright.Machine.Description;

/// <summary>kind <c>relief</c>: relief valve or burst disc.</summary>
public sealed record ReliefPart : Part
{
    /// <summary>Opening pressure, Pa absolute.</summary>
    public required double SetPressurePa { get; init; }
    /// <summary>Least bore of the open device, m; null when not known (that of its line then counts).</summary>
    public double? BoreM { get; init; }
}
