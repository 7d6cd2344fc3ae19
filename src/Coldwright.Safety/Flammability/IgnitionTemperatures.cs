using Coldwright.Fluids.Substances;

namespace Coldwright.Safety.Flammability;

/// <summary>Temperatures at which gases light by themselves on a hot surface.</summary>
/// <remarks>IEC 60079-20-1:2010. Substances whose figure was not read there are missing.</remarks>
public static class IgnitionTemperatures
{
    /// <summary>Citation.</summary>
    public const string Source = "auto-ignition temperatures of IEC 60079-20-1:2010; surfaces 100 K below them as in IEC 60335-2-40 and -2-89, from memory";

    /// <summary>A surface near flammable gas stays this far below the auto-ignition temperature, K.</summary>
    public const double MarginK = 100;

    private static readonly Dictionary<string, double> Celsius = new(StringComparer.Ordinal)
    {
        ["methane"] = 600,
        ["ethane"] = 515,
        ["ethylene"] = 440,
        ["propane"] = 450,
        ["propylene"] = 455,
        ["isobutane"] = 460,
        ["butane"] = 372,
    };

    /// <summary>Auto-ignition temperature, K; null when not in the list.</summary>
    /// <param name="substance">Canonical name.</param>
    public static double? Of(string substance) => Celsius.TryGetValue(substance, out var c) ? c + 273.15 : null;

    /// <summary>Lowest auto-ignition temperature among the components of a mixture, K; null when none is in the list.</summary>
    /// <param name="mixture">Mixture; components with fraction 0 do not count.</param>
    public static double? LowestOf(Composition mixture) =>
        mixture.Names.Zip(mixture.MoleFractions).Where(p => p.Second > 0).Select(p => Of(p.First)).Min();
}
