namespace Coldwright.Machine.Description;

/// <summary>What is at hand and what it costs, read from <c>shop.yaml</c>.</summary>
public sealed record ShopDescription
{
    /// <summary>Currency sign or code used for every price.</summary>
    public required string Currency { get; init; }
    /// <summary>Electricity price per kWh.</summary>
    public required double ElectricityPerKWh { get; init; }
    /// <summary>Price per kg of each gas (canonical name).</summary>
    public required IReadOnlyDictionary<string, double> GasPerKg { get; init; }
    /// <summary>Purity as sold, 0..1, by canonical name; gases whose purity is not given are missing.</summary>
    public IReadOnlyDictionary<string, double> GasPurity { get; init; } = new Dictionary<string, double>();
    /// <summary>What a gas holds besides itself, mol/mol, by its canonical name and that of the impurity; gases whose certificate says nothing are missing.</summary>
    public IReadOnlyDictionary<string, IReadOnlyDictionary<string, double>> GasImpurities { get; init; } = new Dictionary<string, IReadOnlyDictionary<string, double>>();
    /// <summary>Share of the charge lost and replaced per 1000 h of running.</summary>
    public double ChargeLossPer1000H { get; init; }
    /// <summary>Price of a litre of bought liquid by substance.</summary>
    public IReadOnlyDictionary<string, double> BoughtLiquidPerL { get; init; } = new Dictionary<string, double>();
    /// <summary>Tube at hand, with its price.</summary>
    public IReadOnlyList<StockTube> Tubes { get; init; } = [];
    /// <summary>Price of a cubic metre of insulation by material (key of the materials data).</summary>
    public IReadOnlyDictionary<string, double> InsulationPerM3 { get; init; } = new Dictionary<string, double>();
}

/// <summary>Tube at hand.</summary>
/// <param name="Tube">Size.</param>
/// <param name="PricePerM">Price of a metre, in the shop's currency.</param>
public sealed record StockTube(Tube Tube, double PricePerM);
