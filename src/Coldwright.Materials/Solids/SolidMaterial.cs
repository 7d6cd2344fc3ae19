namespace Coldwright.Materials.Solids;

/// <summary>A solid: thermal conductivity against temperature and, where known, density, specific heat, contraction and resistivity.</summary>
public sealed class SolidMaterial
{
    /// <summary>Key used in files, for example <c>stainless-304</c>.</summary>
    public string Name { get; }

    /// <summary>What it is, in words.</summary>
    public string Title { get; }

    /// <summary>Other accepted keys.</summary>
    public IReadOnlyList<string> Aliases { get; }

    /// <summary>Thermal conductivity, W/(m K).</summary>
    public MaterialProperty ConductivityCurve { get; }

    /// <summary>Density at room temperature; null where none is given.</summary>
    public SolidDensity? Density { get; init; }

    /// <summary>Specific heat at constant pressure, J/(kg K); null where none is given.</summary>
    public MaterialProperty? SpecificHeatCurve { get; init; }

    /// <summary>Length against temperature; null where none is given.</summary>
    public ThermalExpansion? Expansion { get; init; }

    /// <summary>Electrical resistivity, ohm m; null where none is given.</summary>
    public MaterialProperty? ResistivityCurve { get; init; }

    /// <summary>Citation of the conductivity.</summary>
    public string Source => ConductivityCurve.Source;

    /// <summary>Provenance of the conductivity: published, or from memory where any part of the curve is.</summary>
    public Provenance Provenance => ConductivityCurve.Provenance;

    /// <summary>Remarks of the data file on the conductivity; empty when there are none.</summary>
    public string Note => ConductivityCurve.Note;

    /// <summary>Lower end of the conductivity curve, K.</summary>
    public double MinimumK => ConductivityCurve.MinimumK;

    /// <summary>Upper end of the conductivity curve, K.</summary>
    public double MaximumK => ConductivityCurve.MaximumK;

    /// <summary>A sentence to show beside every result that rests on figures from memory; null for published ones.</summary>
    public string? Caveat => Provenance == Provenance.FromMemory
        ? $"conductivity of {Name}: a design value from memory, not yet checked against a publication"
        : null;

    /// <param name="name">Key.</param>
    /// <param name="title">What it is, in words.</param>
    /// <param name="aliases">Other accepted keys.</param>
    /// <param name="conductivity">Thermal conductivity, W/(m K).</param>
    public SolidMaterial(string name, string title, IReadOnlyList<string> aliases, MaterialProperty conductivity) =>
        (Name, Title, Aliases, ConductivityCurve) = (name, title, aliases.ToArray(), conductivity);

    /// <summary>Thermal conductivity, W/(m K); outside the range the value at the end is held and a warning given.</summary>
    /// <param name="temperatureK">Temperature, K, above 0.</param>
    public MaterialValue Conductivity(double temperatureK) => ConductivityCurve.At(temperatureK);

    /// <summary>Integral of the conductivity over temperature, W/m; negative when the first temperature is the warmer one.</summary>
    /// <param name="coldK">Cold end, K, above 0.</param>
    /// <param name="warmK">Warm end, K, above 0.</param>
    public MaterialValue Integral(double coldK, double warmK) => ConductivityCurve.Integral(coldK, warmK);

    /// <summary>Specific heat, J/(kg K); outside the range the value at the end is held and a warning given.</summary>
    /// <param name="temperatureK">Temperature, K, above 0.</param>
    /// <exception cref="InvalidOperationException">The library has no specific heat of this solid.</exception>
    public MaterialValue SpecificHeat(double temperatureK) => Heat.At(temperatureK);

    /// <summary>Heat to warm a kilogram from one temperature to another, J/kg; negative when cooling.</summary>
    /// <param name="fromK">Start, K, above 0.</param>
    /// <param name="toK">End, K, above 0.</param>
    /// <exception cref="InvalidOperationException">The library has no specific heat of this solid.</exception>
    public MaterialValue EnthalpyRise(double fromK, double toK) => Heat.Integral(fromK, toK);

    private MaterialProperty Heat => SpecificHeatCurve
        ?? throw new InvalidOperationException($"the library has no specific heat of {Name}: SpecificHeatCurve is null and says so");
}
