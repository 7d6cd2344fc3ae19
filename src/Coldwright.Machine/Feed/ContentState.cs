namespace Coldwright.Machine.Feed;

/// <summary>A product in phase equilibrium in a rigid space, per kilogram.</summary>
public readonly record struct ContentState
{
    /// <summary>K.</summary>
    public double TemperatureK { get; init; }
    /// <summary>Pa absolute.</summary>
    public double PressurePa { get; init; }
    /// <summary>Internal energy of all of it, J/kg, on the documented caloric zero.</summary>
    public double InternalEnergy { get; init; }
    /// <summary>kg/kg; 0 for gas, 1 for liquid and for a dense fluid above the critical density.</summary>
    public double LiquidShare { get; init; }
    /// <summary>kg/m3; of a single phase the density of all.</summary>
    public double LiquidDensity { get; init; }
    /// <summary>kg/m3; of a single phase the density of all.</summary>
    public double VapourDensity { get; init; }
    /// <summary>J/kg; of a single phase the enthalpy of all.</summary>
    public double LiquidEnthalpy { get; init; }
    /// <summary>J/kg; of a single phase the enthalpy of all.</summary>
    public double VapourEnthalpy { get; init; }
    /// <summary>True when liquid and vapour stand together.</summary>
    public bool TwoPhase { get; init; }
}
