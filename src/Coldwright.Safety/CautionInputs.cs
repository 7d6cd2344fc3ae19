using Coldwright.Fluids.Substances;

namespace Coldwright.Safety;

/// <summary>What the cautions need to know beyond the machine's description.</summary>
public sealed record CautionInputs
{
    /// <summary>Molar mass, kg/mol, of a substance by its canonical name.</summary>
    public required Func<string, double> MolarMassKgPerMol { get; init; }

    /// <summary>Pressure, Pa absolute, that a space filled with this liquid at its normal boiling point reaches at constant volume at a
    /// temperature in K; null (or a null answer) when it was not computed.</summary>
    public Func<Composition, double, double?>? TrappedPressurePa { get; init; }

    /// <summary>Computed discharge temperature, K; null before a rating, then the compressor's own limit is used.</summary>
    public double? DischargeTemperatureK { get; init; }

    /// <summary>Coldest temperature computed anywhere in the loop, K; null before a rating.</summary>
    public double? ColdestTemperatureK { get; init; }

    /// <summary>Height above the floor at which the charge would leak, m. IEC 60335-2-40 Annex GG: 0.6 floor (the cautious choice), 1.0 window,
    /// 1.8 wall, 2.2 ceiling.</summary>
    public double ReleaseHeightM { get; init; } = 0.6;
}
