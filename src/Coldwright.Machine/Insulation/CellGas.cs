namespace Coldwright.Machine.Insulation;

/// <summary>What fills the cells of a foam, the pores of a powder or an evacuated space.</summary>
/// <remarks>
/// Closed cells: the amount of gas is fixed, so its pressure falls in proportion to temperature, and each component is limited by its own
/// vapour pressure: what exceeds it has condensed on the cell wall and no longer conducts (the film of liquid is left out).
/// Open cells: the pressure is that of the room everywhere.
/// </remarks>
/// <param name="Name">In words, for reports.</param>
/// <param name="Composition">Substances of the fluid library with mole fractions that add up to 1; empty only at pressure 0.</param>
/// <param name="PressurePa">Pressure at the fill temperature, Pa, 0 to 2e5.</param>
/// <param name="Closed">True for closed cells.</param>
/// <param name="FillTemperatureK">Temperature at which the pressure was set, K.</param>
public sealed record CellGas(string Name, IReadOnlyList<(string Substance, double MoleFraction)> Composition, double PressurePa, bool Closed = true, double FillTemperatureK = 293.15)
{
    private const double Atmosphere = 101325;

    /// <summary>Air at 1 atm: aged foam, wool, powder.</summary>
    public static CellGas Air { get; } = new("air", [("nitrogen", 0.7812), ("oxygen", 0.2096), ("argon", 0.0092)], Atmosphere);

    /// <summary>Nitrogen at 1 atm.</summary>
    public static CellGas Nitrogen { get; } = new("nitrogen", [("nitrogen", 1)], Atmosphere);

    /// <summary>Carbon dioxide at 1 atm: fresh water-blown foam.</summary>
    public static CellGas CarbonDioxide { get; } = new("carbon dioxide", [("carbon-dioxide", 1)], Atmosphere);

    /// <summary>Helium at 1 atm.</summary>
    public static CellGas Helium { get; } = new("helium", [("helium", 1)], Atmosphere);

    /// <summary>R134a at 1 atm: fresh foam.</summary>
    public static CellGas R134a { get; } = new("R134a", [("R134a", 1)], Atmosphere);

    /// <summary>Isopentane at 0.7 atm: fresh foam (pressure: our assumption).</summary>
    public static CellGas Isopentane { get; } = new("isopentane", [("isopentane", 1)], 0.7 * Atmosphere);

    /// <summary>No gas at all.</summary>
    public static CellGas Vacuum { get; } = new("vacuum", [], 0);

    /// <summary>Throws when a figure is outside its range.</summary>
    internal void Validate()
    {
        if (!(PressurePa is >= 0 and <= 2e5)) throw new ArgumentException(FormattableString.Invariant($"the pressure of the cell gas must be 0 to 200000 Pa, got {PressurePa} Pa"), nameof(PressurePa));
        if (!(FillTemperatureK is >= 200 and <= 400)) throw new ArgumentException(FormattableString.Invariant($"the fill temperature must be 200 to 400 K, got {FillTemperatureK} K"), nameof(FillTemperatureK));
        var sum = Composition.Sum(c => c.MoleFraction);
        if (PressurePa > 0 && !(Math.Abs(sum - 1) < 1e-6 && Composition.All(c => c.MoleFraction >= 0)))
            throw new ArgumentException(FormattableString.Invariant($"the mole fractions of the cell gas must be 0 or more and add up to 1, got a sum of {sum}"), nameof(Composition));
    }
}
