using System.Globalization;

namespace Coldwright.Machine.Insulation;

/// <summary>Conduction shape factor S of the wall of a rectangular box: heat flow = S times the conductivity integral.</summary>
/// <remarks>
/// S = sum of A/L over the six faces + 0.54 x the twelve inside edges + 0.15 L for each of the eight corners;
/// A and the edges are taken inside, L is the wall. Source: I. Langmuir, E. Q. Adams, G. S. Meikle, Flow of heat through
/// furnace walls: the shape factor, Trans. Am. Electrochem. Soc. 24 (1913) 53; the same terms stand in textbooks of heat
/// transfer. Valid while every inside dimension is above a fifth of the wall.
/// </remarks>
/// <param name="ShapeFactorM">S, m.</param>
/// <param name="OutsideAreaM2">Outside surface of the box, m2.</param>
/// <param name="Warning">Null where the rule holds; else which dimension is below a fifth of the wall.</param>
public sealed record BoxShapeFactor(double ShapeFactorM, double OutsideAreaM2, string? Warning)
{
    private const double Edge = 0.54;
    private const double Corner = 0.15;

    /// <summary>Shape factor of a box.</summary>
    /// <param name="inside">Inside length, width and height, m, above 0.</param>
    /// <param name="wallM">Wall, m, above 0.</param>
    public static BoxShapeFactor Of((double LengthM, double WidthM, double HeightM) inside, double wallM)
    {
        var (a, b, c) = inside;
        if (!(a > 0 && b > 0 && c > 0 && wallM > 0))
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"the box must have dimensions and a wall above 0 m, got {a} x {b} x {c} m with {wallM} m of wall"));
        var faces = 2 * (a * b + b * c + c * a) / wallM;
        var shape = faces + Edge * 4 * (a + b + c) + Corner * 8 * wallM;
        var (oa, ob, oc) = (a + 2 * wallM, b + 2 * wallM, c + 2 * wallM);
        var smallest = Math.Min(a, Math.Min(b, c));
        var warning = smallest > wallM / 5
            ? null
            : string.Create(CultureInfo.InvariantCulture,
                $"the box is {smallest:0.###} m inside where the shape factor needs more than a fifth of the wall, {wallM / 5:0.###} m: the leak through the wall is a rough figure");
        return new(shape, 2 * (oa * ob + ob * oc + oc * oa), warning);
    }
}
