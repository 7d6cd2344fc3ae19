using System.Globalization;

namespace Coldwright.Report.Loops.Signs;

/// <summary>A drawing of a thing, in its own px; all signs are ours, made from what the thing looks like on a bench.</summary>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
/// <param name="LineX">Where the upright line that it stands in meets it.</param>
/// <param name="Body">SVG elements.</param>
internal sealed record Sign(double Width, double Height, double LineX, string Body)
{
    /// <summary>Where the line leaves below, when not under <see cref="LineX"/>.</summary>
    public double? OutletX { get; init; }

    /// <summary>A number as SVG writes it.</summary>
    public static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A path.</summary>
    public static string Path(string cssClass, string d) => $"<path class=\"{cssClass}\" d=\"{d}\"/>";

    /// <summary>Turned over from left to right.</summary>
    public Sign Mirrored() => this with { LineX = Width - LineX, Body = $"<g transform=\"translate({N(Width)} 0) scale(-1 1)\">{Body}</g>" };
}
