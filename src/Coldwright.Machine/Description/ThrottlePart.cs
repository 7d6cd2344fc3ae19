namespace Coldwright.Machine.Description;

/// <summary>kind <c>throttle</c>: capillary or valve, taken as adiabatic. At most one of the two is described.</summary>
public sealed record ThrottlePart : Part
{
    /// <summary>The capillary; null when it is none or not described.</summary>
    public CapillaryDescription? Capillary { get; init; }
    /// <summary>The valve; null when it is none or not described.</summary>
    public ValveDescription? Valve { get; init; }
}
