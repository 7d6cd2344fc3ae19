namespace Coldwright.Safety.Pressure;

/// <summary>Form of a domed end.</summary>
public enum DomeForm
{
    /// <summary>Half a sphere.</summary>
    Hemispherical,

    /// <summary>Half an ellipsoid, as deep as a quarter of the bore (2:1).</summary>
    Ellipsoidal,

    /// <summary>Dished with a crown radius equal to the bore and a knuckle of 6 % of it.</summary>
    Torispherical,
}

/// <summary>Domed ends under pressure on the hollow side.</summary>
/// <remarks>ASME VIII-1 UG-32: hemisphere t = P L / (2 S E - 0.2 P) with L the inside radius; 2:1 ellipsoid t = P D / (2 S E - 0.2 P) with D the
/// bore; torisphere with a knuckle of 6 % t = 0.885 P L / (S E - 0.1 P) with L the crown radius. Thin ends only: t at most 0.356 L.</remarks>
public static class DomedCap
{
    /// <summary>Citation.</summary>
    public const string Source = "ASME VIII-1 UG-32 (domed ends)";

    /// <summary>Highest pressure of the formulae over S E.</summary>
    public const double HighestOverStress = 0.665;

    /// <summary>Thickness needed, m.</summary>
    /// <param name="form">Form.</param>
    /// <param name="gaugePressurePa">Pressure above the surroundings, Pa, at most 0.665 S E.</param>
    /// <param name="boreM">Inside diameter of the cylinder, m.</param>
    /// <param name="stressPa">Allowable stress, Pa.</param>
    /// <param name="jointEfficiency">0..1.</param>
    public static double ThicknessM(DomeForm form, double gaugePressurePa, double boreM, double stressPa, double jointEfficiency = 1)
    {
        Wall.Check(boreM, stressPa, jointEfficiency);
        Guard.Within(gaugePressurePa, 0, HighestOverStress * stressPa * jointEfficiency, nameof(gaugePressurePa), "Pa");
        var (p, se) = (gaugePressurePa, stressPa * jointEfficiency);
        return form switch
        {
            DomeForm.Hemispherical => p * boreM / 2 / (2 * se - 0.2 * p),
            DomeForm.Ellipsoidal => p * boreM / (2 * se - 0.2 * p),
            DomeForm.Torispherical => 0.885 * p * boreM / (se - 0.1 * p),
            _ => throw new ArgumentOutOfRangeException(nameof(form), form, "unknown form of end"),
        };
    }

    /// <summary>Pressure above the surroundings that an end carries, Pa.</summary>
    /// <param name="form">Form.</param>
    /// <param name="thicknessM">Thickness, m.</param>
    /// <param name="boreM">Inside diameter of the cylinder, m.</param>
    /// <param name="stressPa">Allowable stress, Pa.</param>
    /// <param name="jointEfficiency">0..1.</param>
    public static double GaugePressurePa(DomeForm form, double thicknessM, double boreM, double stressPa, double jointEfficiency = 1)
    {
        Wall.Check(boreM, stressPa, jointEfficiency);
        Guard.Positive(thicknessM, nameof(thicknessM), "m");
        var (t, se) = (thicknessM, stressPa * jointEfficiency);
        return form switch
        {
            DomeForm.Hemispherical => 2 * se * t / (boreM / 2 + 0.2 * t),
            DomeForm.Ellipsoidal => 2 * se * t / (boreM + 0.2 * t),
            DomeForm.Torispherical => se * t / (0.885 * boreM + 0.1 * t),
            _ => throw new ArgumentOutOfRangeException(nameof(form), form, "unknown form of end"),
        };
    }
}
