namespace Coldwright.Report.Charts;

/// <summary>A picture's size in its own units, which are screen pixels when it is shown unscaled.</summary>
/// <remarks>Every picture is drawn twice, for a page and for a telephone, because text that only shrinks with the picture cannot be read there.</remarks>
/// <param name="Width">Width, px.</param>
/// <param name="Height">Height, px (line charts; bar charts follow their rows).</param>
/// <param name="Font">Size of labels, px.</param>
/// <param name="Class">Class name.</param>
public sealed record ChartSize(double Width, double Height, double Font, string Class)
{
    /// <summary>For a page.</summary>
    public static ChartSize Wide { get; } = new(760, 430, 13, "wide");

    /// <summary>For a telephone.</summary>
    public static ChartSize Phone { get; } = new(350, 360, 12, "phone");

    /// <summary>True for the telephone's size.</summary>
    public bool IsPhone => Width < 500;
}
