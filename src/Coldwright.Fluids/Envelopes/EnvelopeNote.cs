namespace Coldwright.Fluids.Envelopes;

/// <summary>A sentence about an envelope with the place that it is about, so that a reader of other units can be told it in his own; as text it speaks SI.</summary>
/// <param name="Before">Words before the place.</param>
/// <param name="TemperatureK">Temperature of the place, K; null when the sentence names none.</param>
/// <param name="PressurePa">Its pressure, Pa absolute; null when the sentence names none.</param>
/// <param name="After">Words after it.</param>
public sealed record EnvelopeNote(string Before, double? TemperatureK = null, double? PressurePa = null, string After = "")
{
    /// <summary>A sentence about a point.</summary>
    internal static EnvelopeNote At(string before, BoundaryPoint point, string after) => new(before, point.TemperatureK, point.PressurePa, after);

    /// <summary>A sentence without a place.</summary>
    /// <param name="text">Text.</param>
    public static implicit operator EnvelopeNote(string text) => new(text);

    /// <summary>The sentence with its place said by the reader's own means.</summary>
    /// <param name="temperature">Says a temperature in K.</param>
    /// <param name="pressure">Says an absolute pressure in Pa.</param>
    public string With(Func<double, string> temperature, Func<double, string> pressure)
    {
        string[] place = [.. TemperatureK is { } k ? [temperature(k)] : Array.Empty<string>(), .. PressurePa is { } pa ? [pressure(pa)] : Array.Empty<string>()];
        return Before + string.Join(" and ", place) + After;
    }

    /// <inheritdoc/>
    public override string ToString() => With(k => FormattableString.Invariant($"{k:0.0} K"), pa => FormattableString.Invariant($"{pa / 1e5:0.00} bar"));
}
