namespace Coldwright.Runs.Explain;

/// <summary>What a run says about its product. SI; null where it was not seen.</summary>
public sealed record BatchTrace
{
    /// <summary>Feed open for, s.</summary>
    public required double FeedS { get; init; }
    /// <summary>From the end of the feed to the opening of the drain, s.</summary>
    public double? WaitS { get; init; }
    /// <summary>Gas taken from the supply, kg.</summary>
    public double? FedKg { get; init; }
    /// <summary>Liquid in the flask, kg.</summary>
    public double? CollectedKg { get; init; }
    /// <summary>Content of the vessel when the drain was opened, K.</summary>
    public double? OpeningK { get; init; }
    /// <summary>Age of that reading, s.</summary>
    public double OpeningAgeS { get; init; }
    /// <summary>Pressure in the vessel then, Pa.</summary>
    public double? OpeningPa { get; init; }
    /// <summary>Highest pressure in the vessel while it was fed, Pa.</summary>
    public double? FeedPa { get; init; }
    /// <summary>What the standing flask loses, kg/s.</summary>
    public double? BoilOffKgPerS { get; init; }
    /// <summary>What arrived in the flask before the drain was opened, as a loss of the vessel, kg/s.</summary>
    public double? SeepKgPerS { get; init; }
}
