namespace Coldwright.Runs.Sensors;

/// <summary>Letter of a thermocouple.</summary>
public enum ThermocoupleType
{
    /// <summary>Nickel-chromium against nickel-aluminium.</summary>
    K,
    /// <summary>Copper against copper-nickel.</summary>
    T,
}
