using System.Text;
using Coldwright.Machine.Description;
using static Coldwright.Report.Loops.Signs.Sign;

namespace Coldwright.Report.Loops.Signs;

/// <summary>The load and the coil that cools it, drawn to fit each other; both signs share one place.</summary>
/// <param name="Load">Vessel or block.</param>
/// <param name="Coil">Coil; it begins at <see cref="Sign.LineX"/> and ends at <see cref="Sign.OutletX"/>, both on top.</param>
/// <param name="ProductX">Where the product comes in from above; null without.</param>
/// <param name="DrainX">Where liquid leaves below.</param>
/// <param name="VentX">Where vapour leaves at the right side of the vessel.</param>
internal sealed record VesselSigns(Sign Load, Sign Coil, double? ProductX, double DrainX, double VentX)
{
    public const double Height = 138;
    /// <summary>How far below the top vapour leaves.</summary>
    public const double VentY = 26;

    private const double Top = 8, Bottom = Height - 4, Cap = 13;

    /// <summary>A vessel with its coil inside.</summary>
    /// <param name="vessel">Vessel; null for a block.</param>
    /// <param name="isCoilInside">False when the coil is wound around it.</param>
    /// <param name="productToHigh">From the product's line to the high-pressure line, px; null without product.</param>
    /// <param name="level">Liquid level, 0..1; null when not known.</param>
    public static VesselSigns Of(VesselPart? vessel, bool isCoilInside, double? productToHigh, double? level) =>
        isCoilInside ? Inside(vessel!, productToHigh, level) : Around(vessel, productToHigh, level);

    /// <summary>A coil without its load, for the legend.</summary>
    public static Sign CoilAlone() => new(34, 34, 6, Tube("M6 1V10C6 16 26 18 26 13S6 10 6 16S26 24 26 19S6 16 6 22S26 32 28 24V1"));

    private static VesselSigns Inside(VesselPart vessel, double? productToHigh, double? level)
    {
        var inlet = 16 + (productToHigh ?? 0);
        double outlet = inlet + 36, width = outlet + 14;
        double? productX = productToHigh is null ? null : 16;
        var coil = new StringBuilder();
        const int turns = 5, steps = 16;
        const double first = 46, pitch = 14;
        for (var i = 0; i <= turns * steps - steps / 2; i++)
        {
            var t = 2 * Math.PI * i / steps;
            coil.Append(i == 0 ? $"M{N(inlet)} 0V{N(first)}" : $"L{N(inlet + 14 - 14 * Math.Cos(t))} {N(first + pitch * i / steps + 4 * Math.Sin(t))}");
        }
        coil.Append($"Q{N(outlet)} {N(first + pitch * (turns - 0.5))} {N(outlet)} {N(first + pitch * (turns - 0.5) - 8)}V0");
        return new(
            new(width, Height, productX ?? 0, Body(vessel, 1, width - 1, productX, level, productToHigh is not null)),
            new(width, Height, inlet, Tube(coil.ToString())) { OutletX = outlet }, productX, 16, width - 1);
    }

    private static VesselSigns Around(VesselPart? vessel, double? productToHigh, double? level)
    {
        const double left = 9;
        double? productX = productToHigh is null ? null : left + 16;
        // With a product the coil begins right under the high-pressure line, beside the vessel.
        var right = productToHigh is { } apart ? left + 16 + Math.Max(34, apart) - 9 : left + 52;
        double inlet = right + 9, outlet = inlet + 15, width = outlet + 4;
        var coil = new StringBuilder($"M{N(inlet)} 0V34");
        const int turns = 5;
        const double pitch = 15;
        for (var i = 0; i < turns; i++)
        {
            var y = 34 + pitch * i;
            // only the near side of each turn is seen
            coil.Append(i == 0 ? "" : $"M{N(inlet)} {N(y)}").Append($"C{N(inlet)} {N(y + 8)} {N(left - 8)} {N(y + 2)} {N(left - 8)} {N(y + 8)}");
        }
        var last = 34 + pitch * turns;
        coil.Append($"M{N(inlet)} {N(last)}Q{N(outlet)} {N(last + 2)} {N(outlet)} {N(last - 8)}V0");
        var body = vessel is null
            ? Path("metal", $"M{N(left)} {N(Top + 8)}H{N(right)}V{N(Bottom)}H{N(left)}Z")
                + Path("faint", string.Concat(Enumerable.Range(0, 9).Select(i => $"M{N(left + 3)} {N(Top + 26 + 12 * i)}L{N(left + 13)} {N(Top + 16 + 12 * i)}")))
            : Body(vessel, left, right, productX, level, productToHigh is not null);
        return new(new(width, Height, productX ?? 0, body), new(width, Height, inlet, Tube(coil.ToString())) { OutletX = outlet }, productX, left + 16, right);
    }

    private static string Body(VesselPart vessel, double left, double right, double? productX, double? level, bool holdsProduct)
    {
        double middle = (left + right) / 2, cap = vessel.Caps == CapShape.Flat ? 0 : Cap;
        var (shoulder, foot) = (Top + cap, Bottom - cap);
        var shell = cap == 0
            ? Path("shell", $"M{N(left)} {N(Top)}H{N(right)}V{N(Bottom)}H{N(left)}Z") + Path("detail", $"M{N(left)} {N(Top + 4)}H{N(right)}M{N(left)} {N(Bottom - 4)}H{N(right)}")
            : Path("shell", $"M{N(left)} {N(shoulder)}C{N(left)} {N(Top - 4)} {N(right)} {N(Top - 4)} {N(right)} {N(shoulder)}V{N(foot)}C{N(right)} {N(Bottom + 4)} {N(left)} {N(Bottom + 4)} {N(left)} {N(foot)}Z");
        var body = shell;
        if (holdsProduct || level is not null)
        {
            var y = foot - (foot - shoulder) * Math.Clamp(level ?? 0.42, 0, 1);
            body += Path("liquid", cap == 0
                ? $"M{N(left + 1)} {N(y)}H{N(right - 1)}V{N(Bottom - 1)}H{N(left + 1)}Z"
                : $"M{N(left + 1)} {N(y)}H{N(right - 1)}V{N(foot)}C{N(right - 1)} {N(Bottom + 3)} {N(left + 1)} {N(Bottom + 3)} {N(left + 1)} {N(foot)}Z");
            body += $"<path class=\"surface\"{(level is null ? " stroke-dasharray=\"4 4\"" : "")} d=\"M{N(left + 1)} {N(y)}Q{N((left + middle) / 2)} {N(y - 4)} {N(middle)} {N(y)}T{N(right - 1)} {N(y)}\"/>";
        }
        if (productX is { } x) body += "<g class=\"cooling\">" + Path("tube", $"M{N(x)} 0V{N(shoulder + 8)}") + "</g>";
        return body;
    }

    private static string Tube(string path) => $"<g class=\"low\"><path class=\"pipe low\" style=\"stroke-width:5\" d=\"{path}\"/><path class=\"bore\" style=\"stroke-width:2.2\" d=\"{path}\"/></g>";
}
