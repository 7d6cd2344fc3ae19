namespace Coldwright.Machine.Throttling;

/// <summary>A valve at work.</summary>
public sealed record ValveResult
{
    /// <summary>kg/s.</summary>
    public required double MassFlowKgPerS { get; init; }
    /// <summary>mol/s.</summary>
    public required double MolarFlow { get; init; }
    /// <summary>True when the flow no longer depends on the pressure behind the valve.</summary>
    public required bool Choked { get; init; }
    /// <summary>Pressure in the narrowest section of the jet, Pa.</summary>
    public required double ThroatPressurePa { get; init; }
    /// <summary>Area of that section, m2.</summary>
    public required double ThroatAreaM2 { get; init; }
    /// <summary>Mass of vapour over mass in that section at equilibrium.</summary>
    public required double ThroatQuality { get; init; }
    /// <summary>What the standard's equation gives for a single-phase inlet, kg/s; null for a two-phase inlet, for which it has none.</summary>
    public required double? StandardMassFlowKgPerS { get; init; }
    /// <summary>Flow with equilibrium throughout the jet, kg/s: how much the allowance for late flashing matters.</summary>
    public required double EquilibriumMassFlowKgPerS { get; init; }
    /// <summary>One standard deviation, relative.</summary>
    public required double RelativeUncertainty { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
}
