namespace Coldwright.Machine.Throttling;

/// <summary>A place along the tube.</summary>
/// <param name="PositionM">From the entrance, m.</param>
/// <param name="PressurePa">Pa.</param>
/// <param name="TemperatureK">K.</param>
/// <param name="Quality">Mass of vapour over mass.</param>
/// <param name="SpecificVolume">m3/kg.</param>
/// <param name="VelocityMPerS">m/s.</param>
/// <param name="FrictionFactor">Darcy friction factor.</param>
/// <param name="GradientPaPerM">Pressure drop per length, Pa/m; grows without limit towards a choked exit.</param>
/// <param name="Phases">Phases in words: <c>vapour+liquid</c>.</param>
public sealed record CapillaryPoint(double PositionM, double PressurePa, double TemperatureK, double Quality, double SpecificVolume,
    double VelocityMPerS, double FrictionFactor, double GradientPaPerM, string Phases);

/// <summary>A capillary at work.</summary>
public sealed record CapillaryResult
{
    /// <summary>All tubes together, kg/s.</summary>
    public required double MassFlowKgPerS { get; init; }
    /// <summary>mol/s.</summary>
    public required double MolarFlow { get; init; }
    /// <summary>kg/(m2 s).</summary>
    public required double MassFlux { get; init; }
    /// <summary>Given or found, m.</summary>
    public required double LengthM { get; init; }
    /// <summary>True when the flow no longer depends on the pressure behind the tube.</summary>
    public required bool Choked { get; init; }
    /// <summary>Pressure inside the exit, Pa: above the back pressure when choked.</summary>
    public required double ExitPressurePa { get; init; }
    /// <summary>Pressure behind the tube, Pa.</summary>
    public required double BackPressurePa { get; init; }
    /// <summary>Pressure just inside the entrance, Pa.</summary>
    public required double EntrancePressurePa { get; init; }
    /// <summary>Pressure at which vapour first appears on the way at equilibrium, Pa; null when none does or some is there from the start.</summary>
    public required double? FlashPressurePa { get; init; }
    /// <summary>Where it does, m from the entrance; null as above.</summary>
    public required double? FlashPositionM { get; init; }
    /// <summary>Underpressure of delayed flashing used, Pa.</summary>
    public required double UnderpressurePa { get; init; }
    /// <summary>One standard deviation of the flow at given length, relative; see docs/theory/throttle.md.</summary>
    public required double RelativeUncertainty { get; init; }
    /// <summary>Kinetic energy at the exit, from a flash of its own at that enthalpy, against the march's, relative to it plus 1 kJ/kg.</summary>
    public required double EnergyError { get; init; }
    /// <summary>The march, entrance to exit.</summary>
    public required IReadOnlyList<CapillaryPoint> Profile { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
}
