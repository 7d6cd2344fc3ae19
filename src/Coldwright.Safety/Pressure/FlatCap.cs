namespace Coldwright.Safety.Pressure;

/// <summary>Flat round ends.</summary>
/// <remarks>t = d sqrt(C P / (S E)), ASME VIII-1 UG-34(c)(2): d bore, C a factor of how the disc is held. The factors are from memory.</remarks>
public static class FlatCap
{
    /// <summary>Citation.</summary>
    public const string Source = "ASME VIII-1 UG-34 (flat ends): t = d sqrt(C P / (S E)), factors C from memory";

    /// <summary>C of a disc held at its rim by a soldered, brazed or welded corner joint: the cautious value, and the one to use for home-made ends.</summary>
    public const double CornerJoint = 0.33;

    /// <summary>Least C that the code allows for a welded corner joint of full strength.</summary>
    public const double StrongCornerJoint = 0.20;

    /// <summary>C of an end made in one piece with the shell, with a rounded corner.</summary>
    public const double Integral = 0.17;

    /// <summary>Thickness needed, m.</summary>
    /// <param name="gaugePressurePa">Pressure above the surroundings, Pa.</param>
    /// <param name="boreM">Bore, m.</param>
    /// <param name="stressPa">Allowable stress, Pa.</param>
    /// <param name="factor">C, 0.1..0.5.</param>
    /// <param name="jointEfficiency">0..1.</param>
    public static double ThicknessM(double gaugePressurePa, double boreM, double stressPa, double factor = CornerJoint, double jointEfficiency = 1)
    {
        Wall.Check(boreM, stressPa, jointEfficiency);
        Guard.NotNegative(gaugePressurePa, nameof(gaugePressurePa), "Pa");
        Guard.Within(factor, 0.1, 0.5, nameof(factor), "");
        return boreM * Math.Sqrt(factor * gaugePressurePa / (stressPa * jointEfficiency));
    }

    /// <summary>Pressure above the surroundings that a disc carries, Pa.</summary>
    /// <param name="thicknessM">Thickness, m.</param>
    /// <param name="boreM">Bore, m.</param>
    /// <param name="stressPa">Allowable stress, Pa.</param>
    /// <param name="factor">C, 0.1..0.5.</param>
    /// <param name="jointEfficiency">0..1.</param>
    public static double GaugePressurePa(double thicknessM, double boreM, double stressPa, double factor = CornerJoint, double jointEfficiency = 1)
    {
        Wall.Check(boreM, stressPa, jointEfficiency);
        Guard.Positive(thicknessM, nameof(thicknessM), "m");
        Guard.Within(factor, 0.1, 0.5, nameof(factor), "");
        return stressPa * jointEfficiency * Math.Pow(thicknessM / boreM, 2) / factor;
    }
}
