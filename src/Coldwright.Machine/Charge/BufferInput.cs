using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Charge;

/// <summary>Where gas leaves a buffer for the suction: an orifice, or a capillary. Own input record, SI.</summary>
public sealed record BleedInput
{
    /// <summary>Bore, m, 5e-5..0.02.</summary>
    public required double BoreM { get; init; }
    /// <summary>Length of a capillary, m, 0..20; 0 is an orifice.</summary>
    public double LengthM { get; init; }
    /// <summary>Discharge coefficient of an orifice, 0.3..1; 0.8 for a small square-edged one with choked flow: our assumption.</summary>
    public double DischargeCoefficient { get; init; } = 0.8;
    /// <summary>Viscosity of the gas in a capillary, Pa s, 1e-6..1e-3; matters little in turbulent flow.</summary>
    public double GasViscosityPaS { get; init; } = 1.3e-5;

    internal void Check()
    {
        InputCheck.Within(BoreM, 5e-5, 0.02, "m", nameof(BoreM));
        InputCheck.Within(LengthM, 0, 20, "m", nameof(LengthM));
        InputCheck.Within(GasViscosityPaS, 1e-6, 1e-3, "Pa s", nameof(GasViscosityPaS));
        InputCheck.Within(DischargeCoefficient, 0.3, 1, "", nameof(DischargeCoefficient));
    }
}

/// <summary>
/// A rigid volume filled from the high side through a valve that opens above a set pressure, and bled back to suction. It holds the
/// high side down when the loop is warm. Own input record, SI.
/// </summary>
public sealed record BufferInput
{
    /// <summary>Volume, m3, 1e-5..1.</summary>
    public required double VolumeM3 { get; init; }
    /// <summary>Temperature of tank and gas, K, 230..400 (the room).</summary>
    public required double TemperatureK { get; init; }
    /// <summary>High-side pressure at which the valve begins to open, Pa absolute.</summary>
    public required double SetPressurePa { get; init; }
    /// <summary>High-side pressure above the set value at which it is fully open, Pa, 1e3..5e6.</summary>
    public required double FullyOpenAbovePa { get; init; }
    /// <summary>Flow area of the open valve times its discharge coefficient, m2, 1e-9..1e-3.</summary>
    public required double ValveAreaM2 { get; init; }
    /// <summary>Way back to suction.</summary>
    public required BleedInput Bleed { get; init; }

    internal void Check()
    {
        InputCheck.Within(VolumeM3, 1e-5, 1, "m3", nameof(VolumeM3));
        InputCheck.Within(TemperatureK, 230, 400, "K", nameof(TemperatureK));
        InputCheck.Within(SetPressurePa, 1e4, 1e8, "Pa", nameof(SetPressurePa));
        InputCheck.Within(FullyOpenAbovePa, 1e3, 5e6, "Pa", nameof(FullyOpenAbovePa));
        InputCheck.Within(ValveAreaM2, 1e-9, 1e-3, "m2", nameof(ValveAreaM2));
        Bleed.Check();
    }
}
