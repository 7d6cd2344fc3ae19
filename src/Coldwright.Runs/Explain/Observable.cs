namespace Coldwright.Runs.Explain;

/// <summary>A quantity of the machine that a log may hold and the model knows. SI, pressures absolute.</summary>
public enum Observable
{
    /// <summary>Load (vessel or block), K.</summary>
    Load,
    /// <summary>High stream before the throttle, K.</summary>
    ThrottleInlet,
    /// <summary>Mixture behind the coil, K.</summary>
    CoilOutlet,
    /// <summary>High stream behind the precooler, K.</summary>
    Precooled,
    /// <summary>Low stream where it leaves the recuperator, K.</summary>
    Return,
    /// <summary>Discharge of the compressor, K.</summary>
    Discharge,
    /// <summary>High pressure, Pa.</summary>
    HighPressure,
    /// <summary>Suction pressure, Pa.</summary>
    LowPressure,
    /// <summary>Flow of the mixture, kg/s.</summary>
    MassFlow,
    /// <summary>Electricity of the compressor, W.</summary>
    CompressorPower,
    /// <summary>All electricity, W.</summary>
    Power,
}
