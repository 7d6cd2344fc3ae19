namespace Coldwright.Machine.Streams;

/// <summary>
/// Everything a local heat-transfer or friction correlation asks of a stream at one enthalpy and pressure. Where a phase is
/// absent its values are those it would have where it appears, so that correlations meet the single-phase limit without a gap.
/// </summary>
public readonly record struct StreamPoint
{
    /// <summary>K.</summary>
    public required double TemperatureK { get; init; }
    /// <summary>Slope dT/dh at constant pressure, K mol/J; not below 0.</summary>
    public required double TemperatureSlope { get; init; }
    /// <summary>Pa.</summary>
    public required double PressurePa { get; init; }
    /// <summary>J/mol.</summary>
    public required double MolarEnthalpy { get; init; }
    /// <summary>kg/mol.</summary>
    public required double MolarMass { get; init; }
    /// <summary>Moles of vapour per mole, 0 to 1.</summary>
    public required double VapourFraction { get; init; }
    /// <summary>Mass of vapour per mass, 0 to 1.</summary>
    public required double Quality { get; init; }
    /// <summary>Homogeneous density of all phases, kg/m3.</summary>
    public required double Density { get; init; }
    /// <summary>The vapour.</summary>
    public required PhaseTransport Vapour { get; init; }
    /// <summary>The liquid; of two liquids the effective one.</summary>
    public required PhaseTransport Liquid { get; init; }
    /// <summary>Surface tension, N/m; 0 where no liquid meets a vapour anywhere in the table.</summary>
    public required double SurfaceTension { get; init; }
    /// <summary>Enthalpy of the vapour less that of the liquid, J/kg: the local heat of vaporisation, compositions included; 0 where the table has no two-phase state.</summary>
    public required double PhaseEnthalpyDifference { get; init; }
    /// <summary>Phases in words, as the flash names them.</summary>
    public required string Phases { get; init; }
    /// <summary>True where the enthalpy lies beyond the ends of the table (the temperature then goes on along its last slope), or the pressure more than half a band beyond its isobars (properties are then those half a band beyond).</summary>
    public bool Outside { get; init; }

    /// <summary>Slope dT/dh per mass, K kg/J.</summary>
    public double MassTemperatureSlope => TemperatureSlope * MolarMass;

    /// <summary>The phase that fills the tube where there is only one: the vapour from a quality of one half on, else the liquid.</summary>
    public PhaseTransport Single => Quality >= 0.5 ? Vapour : Liquid;
}
