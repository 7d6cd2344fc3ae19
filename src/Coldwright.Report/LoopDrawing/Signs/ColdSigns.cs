using System.Text;
using Coldwright.Machine.Description;
using static Coldwright.Report.Loops.Signs.Sign;

namespace Coldwright.Report.Loops.Signs;

/// <summary>Signs of the throttle and of the precooler.</summary>
internal static class ColdSigns
{
    /// <summary>A hair of tube wound to a coil, a needle in its seat, or a waist when the file does not say which.</summary>
    public static Sign Throttle(ThrottlePart part) => part switch
    {
        { Capillary: not null } => Capillary(),
        { Valve: not null } => new(40, 36, 12,
            "<g class=\"high\">" + Path("strand", "M12 0V9") + "</g><g class=\"low\">" + Path("strand", "M12 27V36") + "</g>"
            + Path("shell", "M3 8H21V28H3Z") + Path("solid", "M6 18L20 14.5V21.5Z") + Path("tube plain", "M20 18H33") + Path("shell", "M31 11H37V25H31Z")),
        _ => new(30, 36, 15, "<g class=\"high\">" + Path("strand", "M15 0V14") + "</g><g class=\"low\">" + Path("strand", "M15 22V36") + "</g>"
            + Path("solid", "M2 5Q13 12 13 18T2 31Z") + Path("solid", "M28 5Q17 12 17 18T28 31Z")),
    };

    /// <summary>A frosty jacket on the lines it cools, and its own small loop: pot, fins, fan.</summary>
    /// <param name="productFromHigh">How far left of the high-pressure line the product's line runs through it, px; null when it does not.</param>
    public static Sign Precooler(double? productFromHigh)
    {
        var left = (productFromHigh ?? 0) + 11;
        double x = left, right = left + 11, height = 66;
        var body = new StringBuilder();
        body.Append(Path("shell", $"M6 8H{N(right - 6)}Q{N(right)} 8 {N(right)} 14V52Q{N(right)} 58 {N(right - 6)} 58H6Q0 58 0 52V14Q0 8 6 8Z"));
        body.Append("<g class=\"high\">").Append(Path("pipe high", $"M{N(x)} 0V{N(height)}")).Append("</g>");
        if (productFromHigh is { } apart) body.Append("<g class=\"cooling\">").Append(Path("pipe cooling", $"M{N(x - apart)} 0V{N(height)}")).Append("</g>");
        // its refrigerant boils in the jacket, is pumped by the pot and condensed between the fins
        double a = right, pot = right + 22;
        body.Append("<g class=\"second\">").Append(Path("tube fine", $"M{N(a)} 50H{N(a + 8)}M{N(a + 8)} 50Q{N(a + 10)} 46 {N(a + 12)} 50T{N(a + 16)} 50T{N(a + 20)} 50H{N(pot + 8)}M{N(a)} 16H{N(pot)}M{N(pot + 20)} 16H{N(pot + 28)}V50H{N(pot + 22)}"));
        for (var i = 0; i < 4; i++) body.Append(Path("tube fine", $"M3 {N(17 + 10.5 * i)}H{N(right - 3)}"));
        body.Append("</g>");
        body.Append(Path("shell", $"M{N(pot - 1)} 26V14Q{N(pot - 1)} 6 {N(pot + 10)} 6T{N(pot + 21)} 14V26Z")).Append(Path("detail", $"M{N(pot - 1)} 20H{N(pot + 21)}"));
        body.Append(Path("shell", $"M{N(pot)} 40H{N(pot + 22)}V60H{N(pot)}Z")).Append(Path("faint", $"M{N(pot + 4)} 40V60M{N(pot + 8)} 40V60M{N(pot + 12)} 40V60M{N(pot + 16)} 40V60"));
        return new(pot + 32, height, x, body.ToString());
    }

    private static Sign Capillary()
    {
        const int turns = 4, steps = 14;
        const double top = 10, pitch = 7.5;
        string Spiral(int from, int to)
        {
            var path = new StringBuilder();
            for (var i = from; i <= to; i++)
            {
                var t = 2 * Math.PI * i / steps;
                path.Append(i == from ? 'M' : 'L').Append(N(17 + 14 * Math.Sin(t))).Append(' ').Append(N(top + 4 + pitch * i / steps - 4 * Math.Cos(t)));
            }
            return path.ToString();
        }
        var height = 2 * top + pitch * turns;
        return new(34, height, 17,
            "<g class=\"high\">" + Path("tube", $"M17 0V{N(top)}") + Path("tube fine", Spiral(0, turns * steps / 2)) + "</g>"
            + "<g class=\"low\">" + Path("tube fine", Spiral(turns * steps / 2, turns * steps)) + Path("tube", $"M17 {N(height - top)}V{N(height)}") + "</g>");
    }
}
