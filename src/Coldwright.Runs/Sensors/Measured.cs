namespace Coldwright.Runs.Sensors;

/// <summary>What a channel measures.</summary>
public enum Measured
{
    /// <summary>Temperature, K.</summary>
    Temperature,
    /// <summary>Pressure, Pa absolute.</summary>
    Pressure,
    /// <summary>Power, W.</summary>
    Power,
    /// <summary>Energy counted from the meter's zero, J.</summary>
    Energy,
    /// <summary>Mass on a balance, kg.</summary>
    Mass,
    /// <summary>Mass flow, kg/s.</summary>
    MassFlow,
}
