namespace Coldwright.Quantities;

/// <summary>Why a text is not the quantity that was asked for.</summary>
/// <param name="Text">The text as written.</param>
/// <param name="Message">One sentence for the person who wrote it: what, value, limit, unit, what to write instead.</param>
public sealed record QuantityProblem(string Text, string Message)
{
    /// <summary>The number that was read, in <see cref="Unit"/>; null when none was.</summary>
    public double? Value { get; init; }
    /// <summary>The limit it broke, in <see cref="Unit"/>; null when no limit was broken.</summary>
    public double? Limit { get; init; }
    /// <summary>The unit of value and limit.</summary>
    public string? Unit { get; init; }
    /// <summary>The unit that was probably meant; null when none is near.</summary>
    public string? NearestUnit { get; init; }
}
