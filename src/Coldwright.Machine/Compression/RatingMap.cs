namespace Coldwright.Machine.Compression;

/// <summary>A compressor's sheet: polynomials of flow and power on its refrigerant, and where they hold. Own input record, SI.</summary>
public sealed record RatingMap
{
    /// <summary>Refrigerant or blend of the sheet.</summary>
    public required string Refrigerant { get; init; }
    /// <summary>Mass flow, evaluating to kg/s.</summary>
    public required RatingPolynomial MassFlow { get; init; }
    /// <summary>Electrical power, evaluating to W.</summary>
    public required RatingPolynomial Power { get; init; }
    /// <summary>Lowest and highest evaporating dew point of the sheet, K.</summary>
    public required (double LowK, double HighK) Evaporating { get; init; }
    /// <summary>Lowest and highest condensing dew point of the sheet, K.</summary>
    public required (double LowK, double HighK) Condensing { get; init; }
    /// <summary>Return gas held by the sheet, K; null when it holds a superheat instead.</summary>
    public double? ReturnGasK { get; init; }
    /// <summary>Superheat held by the sheet, K, 0..60; used when no return gas is given.</summary>
    public double SuperheatK { get; init; } = 11.1;

    /// <summary>Gas at the suction port during rating, K.</summary>
    /// <param name="evaporatingK">Dew point, K.</param>
    public double SuctionK(double evaporatingK) => Math.Max(ReturnGasK ?? evaporatingK + SuperheatK, evaporatingK + 1e-3);

    /// <summary>
    /// Flow at another suction density than the sheet's, kg/s: m = m_map (1 + 0.75 (rho/rho_map - 1)). A. E. Dabiri, C. K. Rice,
    /// ASHRAE Trans. 87 (1981) part 2, 771 (factor and reference from memory).
    /// </summary>
    /// <param name="mapFlow">Flow by the sheet, kg/s.</param>
    /// <param name="densityOverMap">Actual over rated suction density, 0.3..2.</param>
    public static double CorrectForDensity(double mapFlow, double densityOverMap) => mapFlow * (1 + 0.75 * (densityOverMap - 1));

    internal void Check()
    {
        InputCheck.Within(Evaporating.LowK, 150, 330, "K", "evaporating low");
        InputCheck.Order(Evaporating.LowK, "evaporating low", Evaporating.HighK, "evaporating high", "K");
        InputCheck.Within(Condensing.LowK, 200, 400, "K", "condensing low");
        InputCheck.Order(Condensing.LowK, "condensing low", Condensing.HighK, "condensing high", "K");
        InputCheck.Order(Evaporating.LowK, "evaporating low", Condensing.HighK, "condensing high", "K");
        InputCheck.Within(SuperheatK, 0, 60, "K", nameof(SuperheatK));
        InputCheck.Optional(ReturnGasK, 200, 400, "K", nameof(ReturnGasK));
    }
}
