using Coldwright.Machine.Description;
using Coldwright.Machine.Recuperation;

namespace Coldwright.Machine.Files;

/// <summary>From a described recuperator to the shape its model calculates with.</summary>
public static class PartGeometry
{
    /// <summary>The shape; null when arrangement, a tube or the length is not given.</summary>
    /// <param name="part">The recuperator.</param>
    /// <exception cref="ArgumentException">The tubes do not fit as described.</exception>
    public static RecuperatorGeometry? Of(RecuperatorPart part)
    {
        if (part is not { Arrangement: { } arrangement, HighTube: { } high, LowTube: { } low, LengthM: { } length }) return null;
        var roughness = part.RoughnessM ?? RecuperatorGeometry.DrawnTubeRoughnessM;
        if (arrangement == RecuperatorArrangement.SideBySide)
        {
            return part.BondWidthM is not { } bond ? null : new SideBySideGeometry(high.OutsideDiameterM, high.WallM, low.OutsideDiameterM, low.WallM,
                bond, part.BondThicknessM, length, part.CoilDiameterM, roughnessM: roughness);
        }
        var highInside = part.HighSide == HighSide.Inner;
        var (inner, outer) = highInside ? (high, low) : (low, high);
        return new TubeInTubeGeometry(inner.OutsideDiameterM, inner.WallM, part.Tubes, outer.OutsideDiameterM, outer.WallM, length, part.CoilDiameterM, highInside, roughness);
    }

    /// <summary>Why the tubes do not fit as described; null when they do, or when a value that matters is missing or was refused already.</summary>
    internal static string? Problem(RecuperatorPart part)
    {
        double?[] numbers = [part.LengthM, part.CoilDiameterM, part.BondWidthM, part.BondThicknessM, part.RoughnessM];
        if (numbers.Any(n => n is double.NaN)) return null;
        try
        {
            _ = Of(part);
            return null;
        }
        catch (ArgumentException e)
        {
            return e.Message;
        }
    }
}
