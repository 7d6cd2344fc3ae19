namespace Coldwright.Machine.Description;

/// <summary>Key <c>rating-sheet</c>: a compressor sheet's ten-coefficient polynomials of mass flow and power.</summary>
public sealed record RatingSheetDescription
{
    /// <summary>Refrigerant of the sheet: a substance or a blend of the library.</summary>
    public required string Refrigerant { get; init; }
    /// <summary>True: dew points in degrees Fahrenheit and flow in lb/h (<c>units: ip</c>); false: degrees Celsius and kg/h (<c>si</c>). Power in W both times.</summary>
    public bool Imperial { get; init; }
    /// <summary>C1 to C10 of the mass flow, in the sheet's own units and order.</summary>
    public required IReadOnlyList<double> MassFlow { get; init; }
    /// <summary>C1 to C10 of the electrical power, W.</summary>
    public required IReadOnlyList<double> Power { get; init; }
    /// <summary>Lowest and highest evaporating dew point of the sheet, K.</summary>
    public required (double LowK, double HighK) Evaporating { get; init; }
    /// <summary>Lowest and highest condensing dew point of the sheet, K.</summary>
    public required (double LowK, double HighK) Condensing { get; init; }
    /// <summary>Return gas held by the sheet, K; null when it holds a superheat.</summary>
    public double? ReturnGasK { get; init; }
    /// <summary>Superheat held by the sheet, K, 0..60; null when it holds the return gas.</summary>
    public double? SuperheatK { get; init; }
}
