using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Oil;

/// <summary>
/// Oil from compressor to separator and back through a valve that a timer opens. Own input record, SI. Every default here is common
/// practice without a published source.
/// </summary>
public sealed record OilCircuitInput
{
    /// <summary>Oil in a compressor as filled, where it is not said, kg: our assumption.</summary>
    public const double UsualChargeKg = 0.35;

    /// <summary>Kind of compressor; decides the usual circulation.</summary>
    public required CompressorKind Kind { get; init; }
    /// <summary>Gas flow of the compressor, kg/s, 1e-6..1.</summary>
    public required double GasMassFlow { get; init; }
    /// <summary>High side at the separator, Pa absolute.</summary>
    public required double HighPressurePa { get; init; }
    /// <summary>Suction, where the oil goes back to, Pa absolute.</summary>
    public required double SuctionPressurePa { get; init; }
    /// <summary>Density of the high-side gas at the separator, kg/m3, 0.05..1000.</summary>
    public required double GasDensityKgPerM3 { get; init; }
    /// <summary>Viscosity of that gas, Pa s, 1e-6..1e-3.</summary>
    public double GasViscosityPaS { get; init; } = 1.3e-5;
    /// <summary>Oil leaving the compressor over gas flow by mass, 0.0005..0.1; null: the usual value of the kind, see <see cref="UsualCirculation"/>.</summary>
    public double? Circulation { get; init; }
    /// <summary>Share of that oil which the separator catches, 0..0.9999.</summary>
    public double SeparatorEfficiency { get; init; } = 0.95;
    /// <summary>Lowest share to reckon with.</summary>
    public double SeparatorEfficiencyLow { get; init; } = 0.85;
    /// <summary>Highest share to reckon with.</summary>
    public double SeparatorEfficiencyHigh { get; init; } = 0.99;
    /// <summary>Oil volume that the separator holds between empty and full, m3, 1e-7..0.01.</summary>
    public required double SumpVolumeM3 { get; init; }
    /// <summary>Share of the sump that is let fill before the valve opens, 0.05..0.95.</summary>
    public double UsedShare { get; init; } = 0.5;
    /// <summary>Bore of the return line, m, 2e-4..0.02.</summary>
    public required double ReturnBoreM { get; init; }
    /// <summary>Length of the return line, m, 0.01..20.</summary>
    public required double ReturnLengthM { get; init; }
    /// <summary>Oil density, kg/m3, 700..1200.</summary>
    public double OilDensityKgPerM3 { get; init; } = 920;
    /// <summary>Kinematic viscosity of the oil with its dissolved gas where it flows back, m2/s, 1e-6..1e-3.</summary>
    public double OilViscosityM2PerS { get; init; } = 20e-6;
    /// <summary>Oil in the compressor when filled, kg, 0.02..20.</summary>
    public double OilChargeKg { get; init; } = UsualChargeKg;
    /// <summary>Share of the passing oil that a filter or adsorber ahead of the cold end takes, 0..1.</summary>
    public double ColdTrapEfficiency { get; init; }
    /// <summary>
    /// Share of the oil reaching the cold end that freezes to the wall there, 1e-5..1; the rest is carried on dissolved in the heavy
    /// liquid or as grains. Our guess, nothing published: the result carries a factor of ten either way.
    /// </summary>
    public double SettlingShare { get; init; } = 0.01;
    /// <summary>Bore of the capillary or valve seat that frozen oil can close, m, 1e-4..0.02.</summary>
    public double ColdBoreM { get; init; } = 0.8e-3;
    /// <summary>Length of plug that closes it, m, 0.001..1.</summary>
    public double PlugLengthM { get; init; } = 0.01;

    /// <summary>Usual oil circulation of a kind: low, middle, high share of the gas flow by mass; our assumption.</summary>
    /// <param name="kind">Kind of compressor.</param>
    public static (double Low, double Middle, double High) UsualCirculation(CompressorKind kind) =>
        kind == CompressorKind.Rotary ? (0.005, 0.015, 0.05) : (0.005, 0.01, 0.03);

    internal void Check()
    {
        InputCheck.Within(GasMassFlow, 1e-6, 1, "kg/s", nameof(GasMassFlow));
        InputCheck.Within(SuctionPressurePa, 1e3, 1e8, "Pa", nameof(SuctionPressurePa));
        InputCheck.Within(HighPressurePa, 1e3, 1e8, "Pa", nameof(HighPressurePa));
        InputCheck.Order(SuctionPressurePa, nameof(SuctionPressurePa), HighPressurePa, nameof(HighPressurePa), "Pa");
        InputCheck.Within(GasDensityKgPerM3, 0.05, 1000, "kg/m3", nameof(GasDensityKgPerM3));
        InputCheck.Within(GasViscosityPaS, 1e-6, 1e-3, "Pa s", nameof(GasViscosityPaS));
        InputCheck.Optional(Circulation, 0.0005, 0.1, "kg/kg", nameof(Circulation));
        InputCheck.Within(SeparatorEfficiency, 0, 0.9999, "", nameof(SeparatorEfficiency));
        InputCheck.Within(SeparatorEfficiencyLow, 0, SeparatorEfficiency, "", nameof(SeparatorEfficiencyLow));
        InputCheck.Within(SeparatorEfficiencyHigh, SeparatorEfficiency, 0.9999, "", nameof(SeparatorEfficiencyHigh));
        InputCheck.Within(SumpVolumeM3, 1e-7, 0.01, "m3", nameof(SumpVolumeM3));
        InputCheck.Within(UsedShare, 0.05, 0.95, "", nameof(UsedShare));
        InputCheck.Within(ReturnBoreM, 2e-4, 0.02, "m", nameof(ReturnBoreM));
        InputCheck.Within(ReturnLengthM, 0.01, 20, "m", nameof(ReturnLengthM));
        InputCheck.Within(OilDensityKgPerM3, 700, 1200, "kg/m3", nameof(OilDensityKgPerM3));
        InputCheck.Within(OilViscosityM2PerS, 1e-6, 1e-3, "m2/s", nameof(OilViscosityM2PerS));
        InputCheck.Within(OilChargeKg, 0.02, 20, "kg", nameof(OilChargeKg));
        InputCheck.Within(ColdTrapEfficiency, 0, 1, "", nameof(ColdTrapEfficiency));
        InputCheck.Within(SettlingShare, 1e-5, 1, "", nameof(SettlingShare));
        InputCheck.Within(ColdBoreM, 1e-4, 0.02, "m", nameof(ColdBoreM));
        InputCheck.Within(PlugLengthM, 0.001, 1, "m", nameof(PlugLengthM));
    }
}
