using System.Globalization;
using Coldwright.Fluids.Substances;
using Coldwright.Quantities;

namespace Coldwright.Cli.States;

/// <summary>
/// Holds a state against the published range of each substance's equation. A mixture outside the range of every one of
/// its substances has no answer; outside that of some, it has one with a warning.
/// </summary>
internal sealed class StateRange
{
    private readonly Substance[] _substances;

    public StateRange(Composition mixture) =>
        _substances = mixture.Names.Where((_, i) => mixture.MoleFractions[i] > 0).Select(SubstanceCatalog.Get).ToArray();

    /// <summary>Checks what is known of a state; null means not known yet.</summary>
    /// <param name="temperatureK">K.</param>
    /// <param name="pressurePa">Pa absolute.</param>
    /// <param name="refusal">Why there is no answer; null when there may be one.</param>
    /// <returns>Warnings.</returns>
    public IReadOnlyList<string> Check(double? temperatureK, double? pressurePa, out string? refusal)
    {
        var warnings = new List<string>();
        refusal = null;
        if (temperatureK is { } t)
        {
            Hold(s => t > s.MaximumTemperatureK, s => s.MaximumTemperatureK, $"the temperature {Kelvin(t)} is above the highest", Kelvin, warnings, ref refusal);
            // A state on the triple point itself must not fall out by rounding.
            Hold(s => t < s.TripleTemperatureK * (1 - 1e-9), s => s.TripleTemperatureK, $"the temperature {Kelvin(t)} is below the triple point", Kelvin, warnings, ref refusal,
                "; freezing is not computed");
        }
        if (pressurePa is { } p)
            Hold(s => p > s.MaximumPressurePa, s => s.MaximumPressurePa, $"the pressure {Bar(p)} is above the highest", Bar, warnings, ref refusal);
        return warnings;
    }

    private void Hold(Func<Substance, bool> isOutside, Func<Substance, double> limit, string what, Func<double, string> show, List<string> warnings, ref string? refusal, string more = "")
    {
        var outside = _substances.Where(isOutside).ToArray();
        if (outside.Length == 0) return;
        var message = $"{what} of the equation of {string.Join(", of ", outside.Select(s => $"{s.Name} ({show(limit(s))})"))}{more}";
        if (outside.Length == _substances.Length) refusal ??= message;
        else warnings.Add(message);
    }

    private static string Kelvin(double t) => $"{t.ToString("0.###", CultureInfo.InvariantCulture)} K ({QuantityText.Temperature(t)})";

    private static string Bar(double p) => QuantityText.Pressure(p);
}
