namespace Coldwright.Report.Charts;

/// <summary>Round numbers along an axis in steps of 1, 2 or 5 times a power of ten.</summary>
internal sealed record Ticks(double Low, double High, double Step)
{
    /// <summary>As many ticks as fit: the smallest round step that gives at most <paramref name="most"/> of them.</summary>
    public static Ticks For(Axis axis, int most)
    {
        var range = axis.High > axis.Low ? axis.High - axis.Low : Math.Max(Math.Abs(axis.High), 1);
        var step = RoundUp(range / Math.Max(most - 1, 1));
        if (axis.Exact) return new(axis.Low, axis.Low + range, step);
        return new(Math.Floor(axis.Low / step + 1e-9) * step, Math.Ceiling((axis.Low + range) / step - 1e-9) * step, step);
    }

    /// <summary>The values, ascending.</summary>
    public IEnumerable<double> Values
    {
        get
        {
            var first = (long)Math.Ceiling(Low / Step - 1e-9);
            var last = (long)Math.Floor(High / Step + 1e-9);
            for (var i = first; i <= last; i++) yield return i * Step;
        }
    }

    /// <summary>A tick as text, with the decimals of the step.</summary>
    public string Text(double value)
    {
        var decimals = Math.Clamp(-(int)Math.Floor(Math.Log10(Step) + 1e-9), 0, 10);
        return value.ToString("F" + decimals, System.Globalization.CultureInfo.InvariantCulture).Replace('-', '\u2212');
    }

    private static double RoundUp(double rough)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return (rough / power) switch
        {
            <= 1 + 1e-9 => power,
            <= 2 + 1e-9 => 2 * power,
            <= 5 + 1e-9 => 5 * power,
            _ => 10 * power,
        };
    }
}
