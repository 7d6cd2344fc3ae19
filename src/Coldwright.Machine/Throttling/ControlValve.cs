namespace Coldwright.Machine.Throttling;

/// <summary>A needle or motor valve as its maker describes it.</summary>
public sealed record ControlValve
{
    /// <summary>One Cv (US gallon per minute at 1 psi) in Kv (m3/h at 1 bar): 0.865, IEC 60534-1.</summary>
    public const double KvPerCv = 0.865;

    // Kv = 1: 1 m3/h of water at 1 bar; the area A for which the flow is A (2 rho dp)^0.5, rho 999.1 kg/m3 (15 C)
    private static readonly double AreaPerKv = 1.0 / 3600 * Math.Sqrt(ControlValveEquations.ReferenceDensity / (2 * 1e5));

    /// <summary>Flow coefficient at full opening, m3/h of water at 1 bar, above 0 to 100.</summary>
    public required double Kv { get; init; }

    /// <summary>Share of the flow coefficient that the present opening gives, above 0 to 1.</summary>
    public double Opening { get; init; } = 1;

    /// <summary>Liquid pressure recovery factor FL, 0.3 to 1; 0.9 suits globe and needle trims (0.98 for small tapered needles in IEC 60534-2-1, Example 4).</summary>
    public double PressureRecovery { get; init; } = 0.9;

    /// <summary>Pressure-drop ratio of choked gas xT, 0.1 to 0.95; 0.72 suits globe trims (0.8 for small tapered needles in IEC 60534-2-1, Example 4).</summary>
    public double GasChokingRatio { get; init; } = 0.72;

    /// <summary>
    /// Late flashing in the jet, 0 (equilibrium) to 1.5: multiplies the underpressure (1 - FF) that IEC 60534-2-1 grants a liquid; with
    /// vapour at the inlet it fades with the vapour's share of the volume.
    /// </summary>
    public double LateFlashing { get; init; } = 1;

    /// <summary>From a flow coefficient in US units.</summary>
    /// <param name="cv">US gallons of water per minute at 1 psi, above 0.</param>
    public static ControlValve OfCv(double cv) => new() { Kv = cv * KvPerCv };

    /// <summary>Area A of the flow A (2 density dp)^0.5 at the present opening, m2: 1.963e-5 m2 for each Kv.</summary>
    public double EffectiveAreaM2 => Kv * Opening * AreaPerKv;

    internal void Check()
    {
        ThrottleGuard.Positive(Kv, nameof(Kv), "m3/h");
        ThrottleGuard.Within(Kv, 0, 100, nameof(Kv), "m3/h");
        ThrottleGuard.Positive(Opening, nameof(Opening), "of full opening");
        ThrottleGuard.Within(Opening, 0, 1, nameof(Opening), "of full opening");
        ThrottleGuard.Within(PressureRecovery, 0.3, 1, nameof(PressureRecovery), "(dimensionless)");
        ThrottleGuard.Within(GasChokingRatio, 0.1, 0.95, nameof(GasChokingRatio), "(dimensionless)");
        ThrottleGuard.Within(LateFlashing, 0, 1.5, nameof(LateFlashing), "(dimensionless)");
    }
}
