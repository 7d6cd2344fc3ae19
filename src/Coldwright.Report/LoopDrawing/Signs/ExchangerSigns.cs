using System.Text;
using Coldwright.Machine.Description;
using static Coldwright.Report.Loops.Signs.Sign;

namespace Coldwright.Report.Loops.Signs;

/// <summary>Two streams side by side over a length: the high-pressure stream comes in at the upper left, the low-pressure one at the lower right.</summary>
internal static class ExchangerSigns
{
    public const double Width = 52;
    // Ports below the top or above the bottom: of the stream that goes straight in, and of the one that meets the tube's side.
    private const double StraightY = 6, StubY = 24;

    private const double Middle = 26, End = 16;

    /// <summary>How far below the top, and above the bottom, the high- and the low-pressure stream have their ports.</summary>
    public static (double High, double Low) Ports(Part part) =>
        part is RecuperatorPart { HighSide: HighSide.Outer, Arrangement: RecuperatorArrangement.TubeInTube or RecuperatorArrangement.TubesInTube } ? (StubY, StraightY) : (StraightY, StubY);

    /// <summary>The recuperator as its tubes are described.</summary>
    public static Sign Recuperator(RecuperatorPart? part, double height)
    {
        var winding = part?.CoilDiameterM is not null;
        return part?.Arrangement is null or RecuperatorArrangement.SideBySide
            ? SideBySide(height, winding, part?.Arrangement is not null)
            : InTube(height, winding, part.Arrangement == RecuperatorArrangement.TubesInTube ? Math.Min(part.Tubes, 3) : 1, part.HighSide == HighSide.Inner);
    }

    /// <summary>The exchanger ahead of the precooler.</summary>
    public static Sign WarmExchanger(double height) => SideBySide(height, false, false);

    private static Sign InTube(double height, bool winding, int tubes, bool highInside)
    {
        var (outer, inner) = highInside ? ("low", "high") : ("high", "low");
        var path = Curve(height, winding, 0, End, height - End);
        var body = new StringBuilder();
        // the outer stream's stubs, then its jacket over them, then the inner tubes
        var stubs = highInside
            ? $"M{N(Width)} {N(StubY)}H{N(Middle)}M{N(Width)} {N(height - StubY)}H{N(Middle)}"
            : $"M0 {N(StubY)}H{N(Middle)}M0 {N(height - StubY)}H{N(Middle)}";
        body.Append($"<g class=\"{outer}\">").Append(Path($"pipe {outer}", stubs));
        if (highInside) body.Append(Path("bore", stubs));
        body.Append(Path("jacket", path)).Append(Path("gas", path)).Append("</g>");
        body.Append($"<g class=\"{inner}\">");
        for (var i = 0; i < tubes; i++)
        {
            var aside = (i - (tubes - 1) / 2.0) * 4.6;
            var strand = Curve(height, winding, aside, End - 2, height - End + 2);
            body.Append(tubes > 1 ? $"<path class=\"strand\" style=\"stroke-width:2.6\" d=\"{strand}\"/>" : Path("strand", strand));
        }
        // the bends by which the inner stream leaves the jacket
        var bends = highInside
            ? $"M0 {N(StraightY)}H{N(Middle - 8)}Q{N(Middle)} {N(StraightY)} {N(Middle)} {N(End - 2)}M0 {N(height - StraightY)}H{N(Middle - 8)}Q{N(Middle)} {N(height - StraightY)} {N(Middle)} {N(height - End + 2)}"
            : $"M{N(Width)} {N(StraightY)}H{N(Middle + 8)}Q{N(Middle)} {N(StraightY)} {N(Middle)} {N(End - 2)}M{N(Width)} {N(height - StraightY)}H{N(Middle + 8)}Q{N(Middle)} {N(height - StraightY)} {N(Middle)} {N(height - End + 2)}";
        body.Append(Path("strand", bends)).Append("</g>");
        return new(Width, height, 0, body.ToString());
    }

    private static Sign SideBySide(double height, bool winding, bool soldered)
    {
        // The tubes touch: the thin solid one and the thick hollow one.
        const double highAside = -2.2, lowAside = 2.9;
        var high = Curve(height, winding, highAside, StraightY + 8, height - StraightY - 8);
        var low = Curve(height, winding, lowAside, StubY + 8, height - StubY - 8);
        string Bends(double side, double port, double edge)
        {
            double x = Middle + side, corner = x + Math.Sign(side) * 8;
            return $"M{N(edge)} {N(port)}H{N(corner)}Q{N(x)} {N(port)} {N(x)} {N(port + 8)}M{N(edge)} {N(height - port)}H{N(corner)}Q{N(x)} {N(height - port)} {N(x)} {N(height - port - 8)}";
        }
        var (highBends, lowBends) = (Bends(highAside, StraightY, 0), Bends(lowAside, StubY, Width));
        return new(Width, height, 0,
            (soldered ? "" : Path("shell", $"M18 14H34Q38 14 38 18V{N(height - 18)}Q38 {N(height - 14)} 34 {N(height - 14)}H18Q14 {N(height - 14)} 14 {N(height - 18)}V18Q14 14 18 14Z"))
            + (soldered ? Path("solder", Curve(height, winding, 0, StubY + 6, height - StubY - 6)) : "")
            + "<g class=\"high\">" + Path("strand", high) + Path("strand", highBends) + "</g>"
            + "<g class=\"low\">" + Path("pipe low", low) + Path("pipe low", lowBends) + Path("bore", low) + Path("bore", lowBends) + "</g>");
    }

    // A line down the middle, winding when the exchanger is coiled; shifted to the side along its normal, so that tubes keep their distance.
    private static string Curve(double height, bool winding, double aside, double from, double to)
    {
        const double amplitude = 6.5;
        var swings = Math.Max(1, Math.Round((height - 2 * End) / 46));
        var k = 2 * Math.PI * swings / (height - 2 * End);
        var path = new StringBuilder();
        var steps = winding ? (int)Math.Ceiling((to - from) / 3) : 1;
        for (var i = 0; i <= steps; i++)
        {
            var y = from + (to - from) * i / steps;
            var inside = Math.Clamp(y, End, height - End);
            double x = Middle, slope = 0;
            if (winding)
            {
                x += amplitude * Math.Sin(k * (inside - End));
                slope = amplitude * k * Math.Cos(k * (inside - End));
            }
            var norm = Math.Sqrt(1 + slope * slope);
            // near the ends the shift is straight sideways, so that the bends meet the tube
            var (dx, dy) = y <= from || y >= to ? (aside, 0.0) : (aside / norm, -aside * slope / norm);
            path.Append(i == 0 ? 'M' : 'L').Append(N(x + dx)).Append(' ').Append(N(y + dy));
        }
        return path.ToString();
    }
}
