namespace Coldwright.Quantities;

/// <summary>What a unit's zero stands for.</summary>
public enum UnitReference
{
    /// <summary>A ratio scale: zero is zero (m, W, K, and bare pressures such as bar, which say no more than that).</summary>
    None,
    /// <summary>Pressure above the room's air (barg, psig).</summary>
    Gauge,
    /// <summary>Pressure above vacuum (bara, psia).</summary>
    Absolute,
    /// <summary>A temperature scale with its own zero (°C, °F).</summary>
    TemperaturePoint,
    /// <summary>A temperature difference only (Δ°C, Δ°F).</summary>
    TemperatureDifference,
}

/// <summary>A unit: its dimension, its size in SI units and what its zero stands for.</summary>
/// <param name="Symbol">The symbol as shown.</param>
/// <param name="Dimension">Exponents of the base dimensions.</param>
/// <param name="Factor">SI units in one of this unit.</param>
/// <param name="Reference">What zero stands for.</param>
/// <param name="OffsetK">For temperature scales: value added before multiplying by <paramref name="Factor"/> to reach kelvin.</param>
public sealed record Unit(string Symbol, Dimension Dimension, double Factor, UnitReference Reference = UnitReference.None, double OffsetK = 0)
{
    /// <summary>SI value (absolute for pressures) of a number in this unit.</summary>
    /// <param name="value">Number in this unit.</param>
    /// <param name="roomPressurePa">Barometric pressure, Pa absolute; used by gauge units only.</param>
    public double ToSi(double value, double roomPressurePa) =>
        (value + OffsetK) * Factor + (Reference == UnitReference.Gauge ? roomPressurePa : 0);

    /// <summary>Number in this unit of an SI value (absolute for pressures).</summary>
    /// <param name="siValue">Value in SI units.</param>
    /// <param name="roomPressurePa">Barometric pressure, Pa absolute; used by gauge units only.</param>
    public double FromSi(double siValue, double roomPressurePa) =>
        (siValue - (Reference == UnitReference.Gauge ? roomPressurePa : 0)) / Factor - OffsetK;
}
