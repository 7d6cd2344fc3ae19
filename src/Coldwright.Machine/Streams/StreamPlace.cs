namespace Coldwright.Machine.Streams;

/// <summary>A place on an isobar: a node and the share of the way to the next, 0 to 1.</summary>
internal readonly record struct IsobarPlace(int Node, double Share);

/// <summary>Where a table answers to an enthalpy and a pressure.</summary>
/// <param name="Isobar">The lower isobar; the upper one is the next.</param>
/// <param name="Weight">Of the upper isobar; 0 in a table of one isobar.</param>
/// <param name="Lower">On the lower isobar.</param>
/// <param name="Upper">On the upper isobar.</param>
/// <param name="TemperatureK">K.</param>
/// <param name="TemperatureSlope">dT/dh, K mol/J.</param>
internal readonly record struct StreamPlace(int Isobar, double Weight, IsobarPlace Lower, IsobarPlace Upper, double TemperatureK, double TemperatureSlope);
