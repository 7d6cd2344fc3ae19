namespace Coldwright.Machine.Compression;

/// <summary>The state points between which a rating was measured or assumed. Temperatures of evaporating and condensing are dew points.</summary>
public sealed record RatingConditions
{
    /// <summary>Evaporating (dew point at the suction pressure), K, 150..320.</summary>
    public required double EvaporatingK { get; init; }
    /// <summary>Condensing (dew point at the discharge pressure), K, above the evaporating temperature.</summary>
    public required double CondensingK { get; init; }
    /// <summary>Gas at the suction port, K.</summary>
    public required double ReturnGasK { get; init; }
    /// <summary>Gas where the counted cooling ends, K: at the evaporator's outlet, or the return gas when all superheat counts.</summary>
    public required double UsefulGasK { get; init; }
    /// <summary>Liquid before the expansion device, K.</summary>
    public required double LiquidK { get; init; }
    /// <summary>Air around the compressor, K.</summary>
    public double RoomTemperatureK { get; init; } = 308.15;

    /// <summary>
    /// A compressor's own rating: 7.2/54.4 C, return gas 35 C, all of it counted, liquid 46.1 C, room 35 C. Common
    /// practice for air-conditioning compressors (45/130/95/115/95 F); the maker's sheet says which he used.
    /// </summary>
    public static RatingConditions Compressor { get; } = new()
    {
        EvaporatingK = 280.35, CondensingK = 327.55, ReturnGasK = 308.15, UsefulGasK = 308.15, LiquidK = 319.25,
    };

    internal void Check()
    {
        InputCheck.Within(EvaporatingK, 150, 320, "K", nameof(EvaporatingK));
        InputCheck.Within(CondensingK, 200, 400, "K", nameof(CondensingK));
        InputCheck.Order(EvaporatingK, nameof(EvaporatingK), CondensingK, nameof(CondensingK), "K");
        InputCheck.Within(ReturnGasK, EvaporatingK, 400, "K", nameof(ReturnGasK));
        InputCheck.Within(UsefulGasK, EvaporatingK, ReturnGasK, "K", nameof(UsefulGasK));
        InputCheck.Within(LiquidK, 150, CondensingK, "K", nameof(LiquidK));
        InputCheck.Within(RoomTemperatureK, 230, 350, "K", nameof(RoomTemperatureK));
    }
}

/// <summary>
/// What stands between the cooling capacity of a whole appliance, measured in a test room, and its compressor: pressures that no
/// nameplate states. They are assumed here, and said aloud in every result made from them.
/// </summary>
public sealed record ApplianceAssumptions
{
    /// <summary>Evaporating, K; 10 C for room coolers: our assumption.</summary>
    public double EvaporatingK { get; init; } = 283.15;
    /// <summary>The evaporating temperature may be this much lower or higher, K, 0..15.</summary>
    public double EvaporatingSpreadK { get; init; } = 3;
    /// <summary>Condensing, K; 48 C for room coolers: our assumption.</summary>
    public double CondensingK { get; init; } = 321.15;
    /// <summary>Lowest condensing temperature to reckon with, K.</summary>
    public double CondensingLowK { get; init; } = 318.15;
    /// <summary>Highest condensing temperature to reckon with, K.</summary>
    public double CondensingHighK { get; init; } = 325.15;
    /// <summary>Superheat at the evaporator's outlet, K, 0..30; it counts as cooling.</summary>
    public double UsefulSuperheatK { get; init; } = 5;
    /// <summary>Superheat gained between evaporator and compressor, K, 0..30; it does not count.</summary>
    public double LineSuperheatK { get; init; } = 5;
    /// <summary>Subcooling of the liquid below its bubble point at the discharge pressure, K, 0..40.</summary>
    public double SubcoolingK { get; init; } = 5;
    /// <summary>Heat of the indoor fan, W: the coil cools it too, though the nameplate leaves it out; 0..2000.</summary>
    public double IndoorFanW { get; init; }
    /// <summary>Air around the compressor, K.</summary>
    public double RoomTemperatureK { get; init; } = 308.15;

    internal void Check()
    {
        InputCheck.Within(EvaporatingSpreadK, 0, 15, "K", nameof(EvaporatingSpreadK));
        InputCheck.Within(EvaporatingK, 200, 300, "K", nameof(EvaporatingK));
        InputCheck.Within(CondensingK, 290, 360, "K", nameof(CondensingK));
        InputCheck.Within(CondensingLowK, 280, CondensingK, "K", nameof(CondensingLowK));
        InputCheck.Within(CondensingHighK, CondensingK, 365, "K", nameof(CondensingHighK));
        InputCheck.Within(UsefulSuperheatK, 0, 30, "K", nameof(UsefulSuperheatK));
        InputCheck.Within(LineSuperheatK, 0, 30, "K", nameof(LineSuperheatK));
        InputCheck.Within(SubcoolingK, 0, 40, "K", nameof(SubcoolingK));
        InputCheck.Within(IndoorFanW, 0, 2000, "W", nameof(IndoorFanW));
        InputCheck.Within(RoomTemperatureK, 230, 350, "K", nameof(RoomTemperatureK));
    }
}
