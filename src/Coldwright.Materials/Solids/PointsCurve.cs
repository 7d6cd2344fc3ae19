namespace Coldwright.Materials.Solids;

/// <summary>Straight lines between points; a single mean value is two equal points.</summary>
public sealed class PointsCurve : PropertyCurve
{
    private readonly double[] _temperatureK;
    private readonly double[] _value;

    /// <param name="temperatureK">Temperatures, K, rising, two or more; the range is from the first to the last.</param>
    /// <param name="value">Values at them, above 0.</param>
    public PointsCurve(IReadOnlyList<double> temperatureK, IReadOnlyList<double> value) : base(temperatureK[0], temperatureK[^1])
    {
        if (temperatureK.Count < 2 || temperatureK.Count != value.Count)
            throw new ArgumentException($"points need two or more pairs, got {temperatureK.Count} temperatures and {value.Count} values");
        for (var i = 1; i < temperatureK.Count; i++)
            if (!(temperatureK[i] > temperatureK[i - 1]))
                throw new ArgumentException($"the temperatures of points must rise, got {temperatureK[i - 1]} K then {temperatureK[i]} K");
        _temperatureK = temperatureK.ToArray();
        _value = value.ToArray();
    }

    /// <inheritdoc/>
    public override double At(double temperatureK)
    {
        var i = 1;
        while (i < _temperatureK.Length - 1 && temperatureK > _temperatureK[i]) i++;
        var share = (temperatureK - _temperatureK[i - 1]) / (_temperatureK[i] - _temperatureK[i - 1]);
        return _value[i - 1] + share * (_value[i] - _value[i - 1]);
    }
}
