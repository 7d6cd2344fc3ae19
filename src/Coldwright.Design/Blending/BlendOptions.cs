namespace Coldwright.Design.Blending;

/// <summary>What a mixture is chosen for.</summary>
public enum BlendGoal
{
    /// <summary>Most net cooling at a load temperature, on this hardware.</summary>
    Cooling,
    /// <summary>Most liquid collected in the flask at a load temperature, on this hardware.</summary>
    Litres,
    /// <summary>Lowest temperature without load, on this hardware.</summary>
    Lowest,
    /// <summary>Largest of the smallest isothermal enthalpy differences between the two pressures: what an endless exchanger would leave, whatever the hardware.</summary>
    Endless,
}

/// <summary>What a mixture must keep to. SI, pressures absolute. Null: no such limit.</summary>
public sealed record BlendLimits
{
    /// <summary>Hottest discharge, K; null: the compressor's own.</summary>
    public double? DischargeK { get; init; }
    /// <summary>Fugacity of the solid over that of the component at the coldest place, at least so much for every gas; 1 is the brink of freezing.</summary>
    public double FreezingMargin { get; init; } = 1.3;
    /// <summary>True: no second liquid before the throttle.</summary>
    public bool OneLiquid { get; init; }
    /// <summary>Largest mole fraction of gases that burn, 0..1.</summary>
    public double? Flammable { get; init; }
    /// <summary>Highest price of a kilogram of the mixture, in the shop's currency.</summary>
    public double? PricePerKg { get; init; }
}

/// <summary>How a mixture is sought.</summary>
public sealed record BlendOptions
{
    /// <summary>What for.</summary>
    public BlendGoal Goal { get; init; } = BlendGoal.Cooling;
    /// <summary>Load temperature, K; null: the product's, else that of the file's operating point.</summary>
    public double? TemperatureK { get; init; }
    /// <summary>Canonical names of the gases that may be used, 2 to 8; empty: those of the shop.</summary>
    public IReadOnlyList<string> Gases { get; init; } = [];
    /// <summary>Limits.</summary>
    public BlendLimits Limits { get; init; } = new();
    /// <summary>What a mole fraction may be off after filling, 0..0.05: the mixture is scored at its worst with every single gas off by so much.</summary>
    public double FillingError { get; init; } = 0.01;
    /// <summary>True: scored by the reference model too, and the worse of both counts.</summary>
    public bool Reference { get; init; } = true;
    /// <summary>Evaluations at a time, 1..16.</summary>
    public int Threads { get; init; } = Math.Min(2, Environment.ProcessorCount);
    /// <summary>Generations of the global search, 1..500.</summary>
    public int Generations { get; init; } = 30;
    /// <summary>Members of the global search's population, 6..500; 0: ten for each gas, 24 to 80.</summary>
    public int Population { get; init; }
    /// <summary>Seed of the global search: the same one gives the same mixture.</summary>
    public int Seed { get; init; } = 1;

    internal void Check()
    {
        if (Gases.Count is not 0 and (< 2 or > 8)) throw new ArgumentException($"gases: {Gases.Count}; 2 to 8 are expected", nameof(Gases));
        if (Gases.Distinct().Count() != Gases.Count) throw new ArgumentException($"a gas is named twice in {string.Join(", ", Gases)}", nameof(Gases));
        if (!(FillingError is >= 0 and <= 0.05)) throw new ArgumentException($"filling error: {FillingError}; 0 to 0.05 is expected", nameof(FillingError));
        if (Threads is < 1 or > 16) throw new ArgumentException($"threads: {Threads}; 1 to 16 are expected", nameof(Threads));
        if (Generations is < 1 or > 500) throw new ArgumentException($"generations: {Generations}; 1 to 500 are expected", nameof(Generations));
        if (Population is not 0 and (< 6 or > 500)) throw new ArgumentException($"population: {Population}; 6 to 500 are expected", nameof(Population));
        if (TemperatureK is { } t && !(t is >= 62 and <= 290)) throw new ArgumentException($"load temperature: {t} K; 62 to 290 K are expected", nameof(TemperatureK));
        if (Limits.Flammable is { } f && !(f is >= 0 and <= 1)) throw new ArgumentException($"share of gases that burn: {f}; 0 to 1 is expected", nameof(Limits));
        if (!(Limits.FreezingMargin is >= 0 and <= 100)) throw new ArgumentException($"freezing margin: {Limits.FreezingMargin}; 0 to 100 is expected", nameof(Limits));
    }
}
