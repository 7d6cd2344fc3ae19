using System.Globalization;

namespace Coldwright.Materials.Solids;

/// <summary>One figure of one solid against temperature: its curves, its integral, where it comes from and how far to trust it.</summary>
/// <remarks>Outside the range the value at the end is held and a warning names value, limit and unit: no polynomial is ever extrapolated.</remarks>
public sealed class MaterialProperty
{
    private readonly PropertyCurve[] _curves;
    private readonly Lazy<CumulativeProperty> _cumulative;
    private readonly string _what;

    /// <summary>Citation.</summary>
    public string Source { get; }

    /// <summary>Published, or from memory where any part of the curve is.</summary>
    public Provenance Provenance { get; }

    /// <summary>One standard deviation divided by the value: of the fit, the specimen and the make together; 0 to 1.</summary>
    public double RelativeUncertainty { get; }

    /// <summary>Remarks of the data file; empty when there are none.</summary>
    public string Note { get; }

    /// <summary>Lower end of the curve, K.</summary>
    public double MinimumK => _curves[0].MinimumK;

    /// <summary>Upper end of the curve, K.</summary>
    public double MaximumK => _curves[^1].MaximumK;

    /// <param name="what">Property and solid, for messages: <c>conductivity of nylon</c>.</param>
    /// <param name="source">Citation.</param>
    /// <param name="provenance">Published or from memory.</param>
    /// <param name="relativeUncertainty">One standard deviation, 0 to 1.</param>
    /// <param name="note">Remarks, may be empty.</param>
    /// <param name="curves">One or more curves whose ranges follow one another without a gap.</param>
    public MaterialProperty(string what, string source, Provenance provenance, double relativeUncertainty, string note, IReadOnlyList<PropertyCurve> curves)
    {
        if (curves.Count == 0) throw new ArgumentException($"{what} needs at least one curve");
        if (!(relativeUncertainty is >= 0 and <= 1)) throw new ArgumentException($"the uncertainty of the {what} must be 0 to 1, got {relativeUncertainty}");
        for (var i = 1; i < curves.Count; i++)
            if (curves[i].MinimumK != curves[i - 1].MaximumK)
                throw new ArgumentException($"{what}: a curve starts at {curves[i].MinimumK} K where the one before ends at {curves[i - 1].MaximumK} K");
        (_what, Source, Provenance, RelativeUncertainty, Note) = (what, source, provenance, relativeUncertainty, note);
        _curves = curves.ToArray();
        _cumulative = new(() => new CumulativeProperty(MinimumK, MaximumK, Held));
    }

    /// <summary>The figure; outside the range the value at the end is held and a warning given.</summary>
    /// <param name="temperatureK">Temperature, K, above 0.</param>
    public MaterialValue At(double temperatureK)
    {
        Require(temperatureK);
        return new(Held(temperatureK), Warning(temperatureK));
    }

    /// <summary>Integral over temperature, unit of the figure x K; negative when the first temperature is the warmer one.</summary>
    /// <param name="coldK">Cold end, K, above 0.</param>
    /// <param name="warmK">Warm end, K, above 0.</param>
    public MaterialValue Integral(double coldK, double warmK)
    {
        Require(coldK);
        Require(warmK);
        var value = _cumulative.Value.At(warmK) - _cumulative.Value.At(coldK);
        return new(value, Warning(coldK) ?? Warning(warmK));
    }

    private double Held(double temperatureK)
    {
        var t = Math.Clamp(temperatureK, MinimumK, MaximumK);
        foreach (var curve in _curves)
            if (t <= curve.MaximumK) return curve.At(t);
        return _curves[^1].At(t);
    }

    private string? Warning(double temperatureK) =>
        temperatureK < MinimumK ? Outside(temperatureK, MinimumK, "down")
        : temperatureK > MaximumK ? Outside(temperatureK, MaximumK, "up")
        : null;

    private string Outside(double temperatureK, double limitK, string direction) => string.Create(CultureInfo.InvariantCulture,
        $"{_what} is known {direction} to {limitK:0.##} K; at {temperatureK:0.##} K the value at {limitK:0.##} K was used");

    private void Require(double temperatureK)
    {
        if (!(double.IsFinite(temperatureK) && temperatureK > 0))
            throw new ArgumentOutOfRangeException(nameof(temperatureK), temperatureK, $"the temperature for the {_what} must be above 0 K");
    }
}
