namespace Coldwright.Machine.Insulation;

/// <summary>Conduction shape factors S, m, of bodies with two surfaces of one temperature each: heat flow = S times the conductivity integral.</summary>
public static class ConductionShapeFactors
{
    /// <summary>
    /// What one outside edge of a wall adds per metre of edge, exact: S = area/wall + this x length, the areas measured inside.
    /// 1 - (2/pi) ln 2 = 0.5587.
    /// </summary>
    /// <remarks>
    /// By conformal mapping; it is the dual of the 0.559 squares of a right-angled bend in a strip of resistive film, P. M. Hall, Thin Solid
    /// Films 1 (1968) 277. Langmuir, Adams and Meikle (1913) found 0.54, which <see cref="BoxShapeFactor"/> uses.
    /// </remarks>
    public static readonly double EdgePerLength = 1 - 2 / Math.PI * Math.Log(2);

    /// <summary>S = 2 pi L / ln(r2/r1), exact, m.</summary>
    /// <param name="lengthM">L, m, above 0.</param>
    /// <param name="innerRadiusM">r1, m, above 0.</param>
    /// <param name="outerRadiusM">r2, m, above r1.</param>
    public static double ConcentricCylinders(double lengthM, double innerRadiusM, double outerRadiusM)
    {
        Nested(innerRadiusM, outerRadiusM);
        // ln(1 + x) keeps its digits for a thin shell
        return 2 * Math.PI * lengthM / double.LogP1((outerRadiusM - innerRadiusM) / innerRadiusM);
    }

    /// <summary>S = 4 pi r1 r2/(r2 - r1), exact, m.</summary>
    /// <param name="innerRadiusM">r1, m, above 0.</param>
    /// <param name="outerRadiusM">r2, m, above r1.</param>
    public static double ConcentricSpheres(double innerRadiusM, double outerRadiusM)
    {
        Nested(innerRadiusM, outerRadiusM);
        return 4 * Math.PI * innerRadiusM * outerRadiusM / (outerRadiusM - innerRadiusM);
    }

    /// <summary>Round tube in the middle of a square block: S = 2 pi L / ln(1.08 w/d), m; for w above 1.3 d within a percent.</summary>
    /// <remarks>Source: F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, table 4.1, case 6.</remarks>
    /// <param name="lengthM">L, m, above 0.</param>
    /// <param name="diameterM">d, m, above 0.</param>
    /// <param name="squareM">Side w of the square, m, above d.</param>
    public static double CylinderInSquare(double lengthM, double diameterM, double squareM)
    {
        Nested(diameterM, squareM);
        return 2 * Math.PI * lengthM / Math.Log(1.08 * squareM / diameterM);
    }

    /// <summary>Square channel in the middle of a square block, m.</summary>
    /// <remarks>
    /// For W/w up to 3: 4 w L/wall + 4 L <see cref="EdgePerLength"/>, exact but for what the edges see of each other; beyond: 2 pi L/ln(0.9139 W/w), both squares
    /// replaced by circles of equal capacitance (inner 0.5902 w, outer 0.5393 W: conformal radii of the square, G. Polya, G. Szego, Isoperimetric Inequalities
    /// in Mathematical Physics (1951)). Both agree to 0.1 % at 3. The fit of textbooks (Incropera and DeWitt, table 4.1, case 11) is 2 to 7 % higher.
    /// </remarks>
    /// <param name="lengthM">L, m, above 0.</param>
    /// <param name="innerM">Inner side w, m, above 0.</param>
    /// <param name="outerM">Outer side W, m, above w.</param>
    public static double SquareInSquare(double lengthM, double innerM, double outerM)
    {
        Nested(innerM, outerM);
        return outerM <= 3 * innerM
            ? lengthM * (8 * innerM / (outerM - innerM) + 4 * EdgePerLength)
            : 2 * Math.PI * lengthM / Math.Log(0.9139 * outerM / innerM);
    }

    private static void Nested(double innerM, double outerM)
    {
        if (!(innerM > 0 && outerM > innerM && double.IsFinite(outerM)))
            throw new ArgumentException(FormattableString.Invariant($"the outer size must be above the inner one and both above 0 m, got {innerM} m in {outerM} m"));
    }
}
