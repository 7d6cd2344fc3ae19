namespace Coldwright.Safety.Pressure;

/// <summary>Wall of a cylinder under internal pressure.</summary>
/// <remarks>t = P R / (S E - 0.6 P), ASME Boiler and Pressure Vessel Code, Section VIII Division 1, UG-27(c)(1), for t at most R/2.
/// P gauge pressure, R inside radius, S allowable stress, E joint efficiency.</remarks>
public static class CylinderWall
{
    /// <summary>Citation.</summary>
    public const string Source = "ASME VIII-1 UG-27: t = P R / (S E - 0.6 P)";

    /// <summary>Wall needed, m.</summary>
    /// <param name="gaugePressurePa">Pressure above the surroundings, Pa, below S E / 0.6.</param>
    /// <param name="boreM">Inside diameter, m.</param>
    /// <param name="stressPa">Allowable stress, Pa.</param>
    /// <param name="jointEfficiency">0..1, 1 for seamless tube.</param>
    public static double ThicknessM(double gaugePressurePa, double boreM, double stressPa, double jointEfficiency = 1)
    {
        Wall.Check(boreM, stressPa, jointEfficiency);
        Guard.Within(gaugePressurePa, 0, 0.385 * stressPa * jointEfficiency, nameof(gaugePressurePa), "Pa");
        return gaugePressurePa * boreM / 2 / (stressPa * jointEfficiency - 0.6 * gaugePressurePa);
    }

    /// <summary>Pressure above the surroundings that a wall carries, Pa.</summary>
    /// <param name="thicknessM">Wall, m.</param>
    /// <param name="boreM">Inside diameter, m.</param>
    /// <param name="stressPa">Allowable stress, Pa.</param>
    /// <param name="jointEfficiency">0..1.</param>
    public static double GaugePressurePa(double thicknessM, double boreM, double stressPa, double jointEfficiency = 1)
    {
        Wall.Check(boreM, stressPa, jointEfficiency);
        Guard.Positive(thicknessM, nameof(thicknessM), "m");
        return stressPa * jointEfficiency * thicknessM / (boreM / 2 + 0.6 * thicknessM);
    }
}
