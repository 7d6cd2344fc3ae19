namespace Coldwright.Quantities;

/// <summary>How the zero of a quantity is to be understood.</summary>
public enum QuantityScale
{
    /// <summary>A plain amount; units with another zero are refused.</summary>
    Amount,
    /// <summary>A pressure; the unit says gauge or absolute.</summary>
    Pressure,
    /// <summary>A pressure that must be given absolute, because gauge readings are counted from it.</summary>
    AbsolutePressure,
    /// <summary>A pressure difference; bare units are right, gauge and absolute are refused.</summary>
    PressureDifference,
    /// <summary>A temperature on a scale.</summary>
    TemperaturePoint,
    /// <summary>A temperature difference, in kelvin.</summary>
    TemperatureDifference,
}
