namespace Coldwright.Machine.Throttling;

/// <summary>A capillary: what a builder can measure. Adiabatic; heat exchanged with a suction line is not part of it.</summary>
public sealed record CapillaryTube
{
    /// <summary>Bore, m, 5e-5 to 0.02. The flow goes with its power of about 2.6: 1 % in bore is 2.6 % in flow.</summary>
    public required double BoreM { get; init; }

    /// <summary>Length, m, above 0 to 200; null when the length is what is asked for.</summary>
    public double? LengthM { get; init; }

    /// <summary>Height of the wall's roughness, m, 0 to a tenth of the bore. Default 0.5 micrometre: drawn capillaries 0.2 to 1 (common practice, no source).</summary>
    public double RoughnessM { get; init; } = 0.5e-6;

    /// <summary>Mean diameter of the coil it is wound to, m, at least 4 bores; null for straight.</summary>
    public double? CoilDiameterM { get; init; }

    /// <summary>Loss at the entrance in velocity heads, 0 (rounded) to 3; 0.5 is the textbook value of a square edge.</summary>
    public double EntranceLoss { get; init; } = 0.5;

    /// <summary>Tubes of this kind in parallel, 1 to 1000; they share the flow evenly.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Viscosity rule of the two-phase part; McAdams by default, whose flows lie nearest to the published ones over four refrigerants (docs/theory/throttle.md).</summary>
    public TwoPhaseViscosity Viscosity { get; init; } = TwoPhaseViscosity.McAdams;

    /// <summary>Allowance for late flashing.</summary>
    public FlashDelay FlashDelay { get; init; } = FlashDelay.None;

    /// <summary>Cross-section of all tubes, m2.</summary>
    public double AreaM2 => Count * Math.PI / 4 * BoreM * BoreM;

    internal double Curvature => CoilDiameterM is { } coil ? BoreM / coil : 0;

    internal void Check()
    {
        ThrottleGuard.Within(BoreM, 5e-5, 0.02, nameof(BoreM), "m");
        if (LengthM is { } length)
        {
            ThrottleGuard.Positive(length, nameof(LengthM), "m");
            ThrottleGuard.Within(length, 0, 200, nameof(LengthM), "m");
        }
        ThrottleGuard.Within(RoughnessM, 0, 0.1 * BoreM, nameof(RoughnessM), "m");
        if (CoilDiameterM is { } coil) ThrottleGuard.Within(coil, 4 * BoreM, 1e3, nameof(CoilDiameterM), "m");
        ThrottleGuard.Within(EntranceLoss, 0, 3, nameof(EntranceLoss), "velocity heads");
        ThrottleGuard.Within(Count, 1, 1000, nameof(Count), "tubes");
        FlashDelay.Check();
    }
}
