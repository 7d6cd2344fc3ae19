namespace Coldwright.Runs.Explain;

/// <summary>What is taken from a trace.</summary>
public enum FeatureKind
{
    /// <summary>ln of the time to a share of the way from warm to the end of the pull-down.</summary>
    LnTime,
    /// <summary>Value of an observable at that moment.</summary>
    AtShare,
    /// <summary>Value at the end of the pull-down.</summary>
    AtEnd,
    /// <summary>Value at the end less that at two thirds of the pull-down.</summary>
    LateChange,
    /// <summary>Load less room before the start, K.</summary>
    WarmReading,
    /// <summary>Pressure at rest.</summary>
    RestPressure,
    /// <summary>ln of the time constant (s) that a lumped body would have, which warms as far after the stop in the same time.</summary>
    LnWarmUp,
    /// <summary>Pressure when the load has warmed so far.</summary>
    WarmUpPressure,
    /// <summary>Figure of the batch.</summary>
    Batch,
}
