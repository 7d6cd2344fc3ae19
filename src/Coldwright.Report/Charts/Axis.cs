namespace Coldwright.Report.Charts;

/// <summary>An axis: what it shows, with unit, and the range the data need.</summary>
/// <param name="Label">Name and unit, for example <c>load temperature, K</c>.</param>
/// <param name="Low">Smallest value to show.</param>
/// <param name="High">Largest value to show; above <paramref name="Low"/>.</param>
/// <param name="Exact">True to end exactly at the range, false to end at a tick.</param>
public sealed record Axis(string Label, double Low, double High, bool Exact = false)
{
    /// <summary>An axis that holds all the values, with some air.</summary>
    /// <param name="label">Name and unit.</param>
    /// <param name="values">Values to hold; at least one.</param>
    /// <param name="air">Share of the range to add at both ends.</param>
    public static Axis Around(string label, IEnumerable<double> values, double air = 0.03)
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        foreach (var value in values) (low, high) = (Math.Min(low, value), Math.Max(high, value));
        if (!double.IsFinite(low) || !double.IsFinite(high)) throw new ArgumentException($"the axis '{label}' has no finite value to show", nameof(values));
        var margin = high > low ? air * (high - low) : Math.Max(Math.Abs(high), 1) * 0.1;
        return new Axis(label, low - margin, high + margin, true);
    }
}
