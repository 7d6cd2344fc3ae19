using System.Globalization;

namespace Coldwright.Materials.Solids;

/// <summary>A solid with its thermal conductivity against temperature and the source of that.</summary>
public sealed class SolidMaterial
{
    private readonly ConductivityCurve[] _curves;
    private readonly Lazy<CumulativeConductivity> _cumulative;

    /// <summary>Key used in files, for example <c>stainless-304</c>.</summary>
    public string Name { get; }

    /// <summary>What it is, in words.</summary>
    public string Title { get; }

    /// <summary>Other accepted keys.</summary>
    public IReadOnlyList<string> Aliases { get; }

    /// <summary>Citation.</summary>
    public string Source { get; }

    /// <summary>Published, or from memory where any part of the curve is.</summary>
    public Provenance Provenance { get; }

    /// <summary>Remarks of the data file; empty when there are none.</summary>
    public string Note { get; }

    /// <summary>Lower end of the curve, K.</summary>
    public double MinimumK => _curves[0].MinimumK;

    /// <summary>Upper end of the curve, K.</summary>
    public double MaximumK => _curves[^1].MaximumK;

    /// <summary>A sentence to show beside every result that rests on figures from memory; null for published ones.</summary>
    public string? Caveat => Provenance == Provenance.FromMemory
        ? $"conductivity of {Name}: a design value from memory, not yet checked against a publication"
        : null;

    /// <param name="name">Key.</param>
    /// <param name="title">What it is, in words.</param>
    /// <param name="aliases">Other accepted keys.</param>
    /// <param name="source">Citation.</param>
    /// <param name="provenance">Published or from memory.</param>
    /// <param name="note">Remarks, may be empty.</param>
    /// <param name="curves">One or more curves whose ranges follow one another without a gap.</param>
    public SolidMaterial(string name, string title, IReadOnlyList<string> aliases, string source, Provenance provenance, string note, IReadOnlyList<ConductivityCurve> curves)
    {
        if (curves.Count == 0) throw new ArgumentException($"{name} needs at least one conductivity curve");
        for (var i = 1; i < curves.Count; i++)
            if (curves[i].MinimumK != curves[i - 1].MaximumK)
                throw new ArgumentException($"{name}: a curve starts at {curves[i].MinimumK} K where the one before ends at {curves[i - 1].MaximumK} K");
        (Name, Title, Aliases, Source, Provenance, Note) = (name, title, aliases.ToArray(), source, provenance, note);
        _curves = curves.ToArray();
        _cumulative = new(() => new CumulativeConductivity(MinimumK, MaximumK, Held));
    }

    /// <summary>Thermal conductivity, W/(m K); outside the range the value at the end is held and a warning given.</summary>
    /// <param name="temperatureK">Temperature, K, above 0.</param>
    public MaterialValue Conductivity(double temperatureK)
    {
        Require(temperatureK);
        return new(Held(temperatureK), Warning(temperatureK));
    }

    /// <summary>Integral of the conductivity over temperature, W/m; negative when the first temperature is the warmer one.</summary>
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
        $"conductivity of {Name} is known {direction} to {limitK:0.##} K; at {temperatureK:0.##} K the value at {limitK:0.##} K was used");

    private void Require(double temperatureK)
    {
        if (!(double.IsFinite(temperatureK) && temperatureK > 0))
            throw new ArgumentOutOfRangeException(nameof(temperatureK), temperatureK, $"temperature of {Name} must be above 0 K");
    }
}
