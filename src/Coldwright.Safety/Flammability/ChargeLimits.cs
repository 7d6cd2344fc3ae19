namespace Coldwright.Safety.Flammability;

/// <summary>How much flammable refrigerant a room may hold.</summary>
/// <remarks>IEC 60335-2-40 Annex GG: m1 = 4 m3 LFL, m2 = 26 m3 LFL, m3 = 130 m3 LFL; m_max = 2.5 LFL^(5/4) h0 A^(1/2), A_min = (M / (2.5 LFL^(5/4) h0))^2,
/// LFL in kg/m3, h0 height of release in m (0.6 floor, 1.0 window, 1.8 wall, 2.2 ceiling), A floor in m2.</remarks>
public static class ChargeLimits
{
    /// <summary>Citation.</summary>
    public const string Source = "IEC 60335-2-40 Annex GG";

    /// <summary>Free of room size up to here, kg.</summary>
    /// <param name="lflKgPerM3">Lower flammability limit, kg/m3.</param>
    public static double M1Kg(double lflKgPerM3) => Times(4, lflKgPerM3);

    /// <summary>Highest charge without special ventilation, kg.</summary>
    /// <param name="lflKgPerM3">Lower flammability limit, kg/m3.</param>
    public static double M2Kg(double lflKgPerM3) => Times(26, lflKgPerM3);

    /// <summary>Highest charge at all in a room where people are, kg.</summary>
    /// <param name="lflKgPerM3">Lower flammability limit, kg/m3.</param>
    public static double M3Kg(double lflKgPerM3) => Times(130, lflKgPerM3);

    /// <summary>Charge by the formula for a room, kg, before m1 and m2 are held against it.</summary>
    /// <param name="lflKgPerM3">Lower flammability limit, kg/m3.</param>
    /// <param name="releaseHeightM">h0, m.</param>
    /// <param name="floorAreaM2">A, m2.</param>
    public static double ByRoomKg(double lflKgPerM3, double releaseHeightM, double floorAreaM2)
    {
        Guard.Positive(lflKgPerM3, nameof(lflKgPerM3), "kg/m3");
        Guard.Positive(releaseHeightM, nameof(releaseHeightM), "m");
        Guard.Positive(floorAreaM2, nameof(floorAreaM2), "m2");
        return 2.5 * Math.Pow(lflKgPerM3, 1.25) * releaseHeightM * Math.Sqrt(floorAreaM2);
    }

    /// <summary>Allowed charge, kg: by the room, but at least m1 and at most m2.</summary>
    /// <param name="lflKgPerM3">Lower flammability limit, kg/m3.</param>
    /// <param name="releaseHeightM">h0, m.</param>
    /// <param name="floorAreaM2">A, m2.</param>
    public static double AllowedKg(double lflKgPerM3, double releaseHeightM, double floorAreaM2) =>
        Math.Min(Math.Max(ByRoomKg(lflKgPerM3, releaseHeightM, floorAreaM2), M1Kg(lflKgPerM3)), M2Kg(lflKgPerM3));

    /// <summary>Floor that a charge needs, m2; 0 up to m1.</summary>
    /// <param name="chargeKg">Charge, kg.</param>
    /// <param name="lflKgPerM3">Lower flammability limit, kg/m3.</param>
    /// <param name="releaseHeightM">h0, m.</param>
    public static double FloorM2(double chargeKg, double lflKgPerM3, double releaseHeightM)
    {
        Guard.NotNegative(chargeKg, nameof(chargeKg), "kg");
        Guard.Positive(releaseHeightM, nameof(releaseHeightM), "m");
        if (chargeKg <= M1Kg(lflKgPerM3)) return 0;
        return Math.Pow(chargeKg / (2.5 * Math.Pow(lflKgPerM3, 1.25) * releaseHeightM), 2);
    }

    private static double Times(double volumeM3, double lflKgPerM3)
    {
        Guard.Positive(lflKgPerM3, nameof(lflKgPerM3), "kg/m3");
        return volumeM3 * lflKgPerM3;
    }
}
