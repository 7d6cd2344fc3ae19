namespace Coldwright.Simulation.Batch;

/// <summary>What a schedule is chosen for.</summary>
public enum BatchGoal
{
    /// <summary>Most litres per hour.</summary>
    LitresPerHour,
    /// <summary>Least electricity per litre.</summary>
    EnergyPerLitre,
}

/// <summary>How a batch is simulated.</summary>
public sealed record BatchOptions
{
    /// <summary>The schedule; null: the best one is sought.</summary>
    public BatchPlan? Plan { get; init; }
    /// <summary>What the best one is for.</summary>
    public BatchGoal Goal { get; init; } = BatchGoal.LitresPerHour;
    /// <summary>Batches in a row, 1..50; the next begins with what the last one left in vessel, lines and flask.</summary>
    public int Batches { get; init; } = 1;
    /// <summary>True: the flask is cold at the start, from an earlier filling poured out.</summary>
    public bool FlaskCold { get; init; }
    /// <summary>Vessel at the start, K; null: as cold as the cooler makes it empty, but not so cold that gas at room pressure condenses.</summary>
    public double? StartTemperatureK { get; init; }
    /// <summary>Relative tolerance of the integration.</summary>
    public double RelativeTolerance { get; init; } = 1e-6;

    internal void Check()
    {
        if (Batches is < 1 or > 50) throw new ArgumentException($"batches: {Batches}; 1 to 50 expected", nameof(Batches));
        if (!(RelativeTolerance is >= 1e-10 and <= 1e-3)) throw new ArgumentException($"relative tolerance {RelativeTolerance}; 1e-10 to 1e-3 expected", nameof(RelativeTolerance));
    }
}
