using Coldwright.Machine.Layout;

namespace Coldwright.Report.Loops;

/// <summary>Where the three upright lines stand and how large signs and letters are, px.</summary>
/// <remarks>
/// The telephone's picture is 330 wide: shown on a screen of 360 px its letters are still 11 px high. There the low-pressure line runs along the
/// right edge and has its figures on its left; on a page they stand on its right.
/// </remarks>
/// <param name="Class">Class name: wide or phone.</param>
/// <param name="Width">Width of the picture.</param>
/// <param name="Font">Size of letters.</param>
/// <param name="Scale">Size of signs against their drawing.</param>
/// <param name="ProductX">The product's line.</param>
/// <param name="HighX">The high-pressure line.</param>
/// <param name="LowX">The low-pressure line.</param>
/// <param name="SideWall">Thickness of the cold box's sides.</param>
/// <param name="EndWall">Thickness of its top and bottom.</param>
/// <param name="Step">From a line to the signs on a branch.</param>
internal sealed record LoopSize(string Class, double Width, double Font, double Scale, double ProductX, double HighX, double LowX, double SideWall, double EndWall, double Step)
{
    public bool IsPhone => Class == "phone";

    /// <summary>Height of a line of text.</summary>
    public double LineHeight => Math.Round(1.22 * Font, 1);

    /// <summary>Leftmost and rightmost x of texts and signs.</summary>
    public double Left => Outside + SideWall + 6;

    public double Right => Width - 2 - SideWall - 6;

    /// <summary>Left edge of the cold box; left of it the strip that goes from warm to cold.</summary>
    public double Outside => IsPhone ? 6 : 10;

    /// <summary>Where the low-pressure line's figures stand.</summary>
    public bool LowLabelsRight => !IsPhone;

    /// <summary>The size for a machine: without a product line the others move left; deep branches widen the middle.</summary>
    /// <param name="isPhone">For a telephone.</param>
    /// <param name="layout">Layout.</param>
    /// <param name="branchDepth">How many steps the deepest branches go sideways (<see cref="Branches.Depth"/>).</param>
    public static LoopSize For(bool isPhone, LoopLayout layout, (int Loop, int Product, int Vessel) branchDepth)
    {
        var size = isPhone
            ? new LoopSize("phone", 330, 11.5, 0.9, 100, 128, 313, 7, 14, 26)
            : new LoopSize("wide", 640, 13, 1, 152, 194, 428, 16, 22, 32);
        if (layout.Feed is null)
        {
            // On a page the rest moves to the middle, on a telephone to the left, where it gains room for words.
            var shift = isPhone ? 84 : 70;
            size = size with { HighX = size.HighX - shift, LowX = isPhone ? size.LowX : size.LowX - shift };
        }
        // Branches of the product's line stand left of it and push everything to the right; only the deepest need a wider picture.
        var left = branchDepth.Product == 0 ? 0 : Math.Max(0, branchDepth.Product * size.Step + (isPhone ? 90 : 112) - (size.ProductX - size.Left));
        var more = Math.Max(0, Math.Max(branchDepth.Loop - 2, branchDepth.Vessel - (isPhone ? 1 : 3))) * size.Step + Math.Max(0, left - 40);
        return size with { Width = size.Width + more, LowX = size.LowX + more, ProductX = size.ProductX + left, HighX = size.HighX + left };
    }
}
