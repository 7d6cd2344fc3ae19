namespace Coldwright.Blind;

/// <summary>How much a builder measures.</summary>
public enum SensorSet
{
    /// <summary>One thermocouple at the vessel and two gauges, by hand every ten minutes.</summary>
    Bare,
    /// <summary>A logger with three thermocouples, two pressures and the electricity; the flask is weighed.</summary>
    Usual,
    /// <summary>Everything: all stations of the loop, vessel pressure, flow, both powers, bottle and flask on balances.</summary>
    Full,
}
