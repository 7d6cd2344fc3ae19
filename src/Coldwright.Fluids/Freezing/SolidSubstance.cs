namespace Coldwright.Fluids.Freezing;

/// <summary>A change of structure of a solid on cooling.</summary>
/// <param name="TemperatureK">Transition temperature, K.</param>
/// <param name="Heat">Heat of the transition, J/mol; null: not used, see the note.</param>
/// <param name="Note">Why, in words.</param>
public sealed record SolidTransition(double TemperatureK, double? Heat, string Note);

/// <summary>What is known about a pure substance as a solid.</summary>
public sealed record SolidSubstance
{
    /// <summary>Canonical name.</summary>
    public required string Name { get; init; }
    /// <summary>Triple-point temperature, K.</summary>
    public required double TripleTemperatureK { get; init; }
    /// <summary>Heat of fusion at the triple point, J/mol.</summary>
    public required double HeatOfFusion { get; init; }
    /// <summary>Changes of structure below the triple point.</summary>
    public required IReadOnlyList<SolidTransition> Transitions { get; init; }
    /// <summary>Sublimation pressure where a published equation exists; it is then preferred to the heat of fusion.</summary>
    public required SublimationCurve? Sublimation { get; init; }
    /// <summary>Citations of the values above.</summary>
    public required IReadOnlyList<string> Sources { get; init; }
}
