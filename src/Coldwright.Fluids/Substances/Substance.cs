using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.IdealGas;

namespace Coldwright.Fluids.Substances;

/// <summary>A pure substance with the published constants and equation of its source paper.</summary>
public sealed record Substance
{
    /// <summary>Canonical name.</summary>
    public required string Name { get; init; }
    /// <summary>Chemical formula.</summary>
    public required string Formula { get; init; }
    /// <summary>Molar mass, kg/mol.</summary>
    public required double MolarMass { get; init; }
    /// <summary>Gas constant of the source paper, J/(mol K).</summary>
    public required double GasConstant { get; init; }
    /// <summary>Temperature that reduces tau, K.</summary>
    public required double ReducingTemperatureK { get; init; }
    /// <summary>Density that reduces delta, mol/m3.</summary>
    public required double ReducingDensity { get; init; }
    /// <summary>Critical temperature, K.</summary>
    public required double CriticalTemperatureK { get; init; }
    /// <summary>Critical pressure, Pa.</summary>
    public required double CriticalPressurePa { get; init; }
    /// <summary>Critical molar density, mol/m3.</summary>
    public required double CriticalDensity { get; init; }
    /// <summary>Triple-point temperature, K.</summary>
    public required double TripleTemperatureK { get; init; }
    /// <summary>Liquid density at the triple point, mol/m3.</summary>
    public required double TripleLiquidDensity { get; init; }
    /// <summary>Acentric factor.</summary>
    public required double AcentricFactor { get; init; }
    /// <summary>Highest temperature of the equation, K.</summary>
    public required double MaximumTemperatureK { get; init; }
    /// <summary>Highest pressure of the equation, Pa.</summary>
    public required double MaximumPressurePa { get; init; }
    /// <summary>Ideal-gas heat capacity.</summary>
    public required IdealGasHeatCapacity IdealGas { get; init; }
    /// <summary>Residual Helmholtz energy terms.</summary>
    public required ResidualTerms Residual { get; init; }
    /// <summary>Estimates of the saturation line.</summary>
    public required SaturationEstimates Saturation { get; init; }
    /// <summary>Citation of the equation of state.</summary>
    public required string Source { get; init; }
}
