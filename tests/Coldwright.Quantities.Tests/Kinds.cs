using Coldwright.Quantities;

namespace Coldwright.Quantities.Tests;

internal static class Kinds
{
    private static readonly Dictionary<string, QuantityKind> _named = new()
    {
        ["pressure"] = QuantityKind.Pressure,
        ["absolute"] = QuantityKind.AbsolutePressure,
        ["drop"] = QuantityKind.PressureDifference,
        ["temperature"] = QuantityKind.Temperature,
        ["difference"] = QuantityKind.TemperatureDifference,
        ["length"] = QuantityKind.Length,
        ["area"] = QuantityKind.Area,
        ["volume"] = QuantityKind.Volume,
        ["mass"] = QuantityKind.Mass,
        ["time"] = QuantityKind.Time,
        ["rate"] = QuantityKind.Rate,
        ["speed"] = QuantityKind.RotationalSpeed,
        ["power"] = QuantityKind.Power,
        ["energy"] = QuantityKind.Energy,
        ["conductance"] = QuantityKind.Conductance,
        ["massflow"] = QuantityKind.MassFlow,
        ["molarflow"] = QuantityKind.MolarFlow,
        ["volumeflow"] = QuantityKind.VolumeFlow,
        ["enthalpy"] = QuantityKind.MolarEnthalpy,
        ["entropy"] = QuantityKind.MolarEntropy,
        ["fraction"] = QuantityKind.Fraction,
        ["number"] = QuantityKind.Number,
        ["energyprice"] = QuantityKind.PricePerEnergy,
        ["massprice"] = QuantityKind.PricePerMass,
        ["volumeprice"] = QuantityKind.PricePerVolume,
    };

    public static IEnumerable<QuantityKind> All => _named.Values;

    public static QuantityKind Named(string name) => _named[name];
}
