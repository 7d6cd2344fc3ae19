namespace Coldwright.Fluids.States;

/// <summary>What a phase is.</summary>
public enum PhaseKind
{
    /// <summary>Gas or vapour.</summary>
    Vapour,
    /// <summary>The liquid, or of two liquids the lighter by molar density order below the second.</summary>
    Liquid,
    /// <summary>A second, denser liquid.</summary>
    SecondLiquid,
}

/// <summary>One homogeneous phase. Molar quantities on the documented caloric zero (<see cref="IdealGas.CaloricZero"/>).</summary>
public sealed record PhaseState
{
    /// <summary>vapour, liquid or second liquid.</summary>
    public required PhaseKind Kind { get; init; }
    /// <summary>Moles of this phase per mole of mixture.</summary>
    public required double Fraction { get; init; }
    /// <summary>Mole fractions.</summary>
    public required IReadOnlyList<double> Composition { get; init; }
    /// <summary>mol/m3.</summary>
    public required double MolarDensity { get; init; }
    /// <summary>J/mol.</summary>
    public required double MolarEnthalpy { get; init; }
    /// <summary>J/(mol K).</summary>
    public required double MolarEntropy { get; init; }
    /// <summary>cp, J/(mol K).</summary>
    public required double MolarHeatCapacity { get; init; }
    /// <summary>cv, J/(mol K).</summary>
    public required double MolarIsochoricHeatCapacity { get; init; }
    /// <summary>m/s.</summary>
    public required double SpeedOfSound { get; init; }
    /// <summary>Dynamic viscosity, Pa s; null until <see cref="Transport.TransportModel.Add(FluidState)"/> fills it in.</summary>
    public double? ViscosityPaS { get; init; }
    /// <summary>Thermal conductivity, W/(m K); null until <see cref="Transport.TransportModel.Add(FluidState)"/> fills it in.</summary>
    public double? ConductivityWPerMK { get; init; }
    /// <summary>kg/mol.</summary>
    public required double MolarMass { get; init; }
    /// <summary>ln of the fugacity coefficients.</summary>
    public required IReadOnlyList<double> LnFugacityCoefficients { get; init; }
}

/// <summary>A state in phase equilibrium.</summary>
public sealed record FluidState
{
    /// <summary>K.</summary>
    public required double TemperatureK { get; init; }
    /// <summary>Pa.</summary>
    public required double PressurePa { get; init; }
    /// <summary>Overall mole fractions.</summary>
    public required IReadOnlyList<double> Composition { get; init; }
    /// <summary>Phases: vapour first, then liquids.</summary>
    public required IReadOnlyList<PhaseState> Phases { get; init; }
    /// <summary>kg/mol.</summary>
    public required double MolarMass { get; init; }

    /// <summary>Moles of vapour per mole.</summary>
    public double VapourFraction => Phases.Where(p => p.Kind == PhaseKind.Vapour).Sum(p => p.Fraction);
    /// <summary>Overall, mol/m3.</summary>
    public double MolarDensity => 1 / Phases.Sum(p => p.Fraction / p.MolarDensity);
    /// <summary>Overall, J/mol.</summary>
    public double MolarEnthalpy => Phases.Sum(p => p.Fraction * p.MolarEnthalpy);
    /// <summary>Overall, J/(mol K).</summary>
    public double MolarEntropy => Phases.Sum(p => p.Fraction * p.MolarEntropy);
    /// <summary>Names of the phases joined: <c>vapour+liquid</c>.</summary>
    public string PhaseNames => string.Join("+", Phases.Select(p => Name(p.Kind)));

    /// <summary>The word used in every output.</summary>
    public static string Name(PhaseKind kind) => kind switch
    {
        PhaseKind.Vapour => "vapour",
        PhaseKind.Liquid => "liquid",
        _ => "second_liquid",
    };
}
