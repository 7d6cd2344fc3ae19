namespace Coldwright.Safety.Air;

/// <summary>Oxygen in a well-mixed room into which an inert gas escapes.</summary>
/// <remarks>
/// Fermilab ES&amp;H Manual, chapter 4240 (oxygen deficiency hazards). V room, Q fresh air or exhaust, R gas escaping, t time, C0 = 0.21:
/// air blown in: C = C0/(Q+R) [Q + R exp(-(Q+R) t/V)]; exhaust, Q above R: C = C0 [1 - (R/Q)(1 - exp(-Q t/V))];
/// exhaust weaker than the leak, or none: C = C0 exp(-R t/V); after the leak: C = C0 - (C0 - Ce) exp(-Q (t - te)/V); sudden: C = C0 (1 - Vg/V).
/// </remarks>
public static class RoomOxygen
{
    /// <summary>Citation.</summary>
    public const string Source = "Fermilab ES&H Manual, chapter 4240 (oxygen deficiency hazards)";

    /// <summary>Oxygen in air as the manual takes it, mole fraction.</summary>
    public const double Normal = 0.21;

    /// <summary>After a sudden escape, mole fraction; 0 when the gas fills the room.</summary>
    /// <param name="roomM3">Room, m3.</param>
    /// <param name="gasM3">Gas at room conditions, m3.</param>
    /// <param name="normal">Oxygen before, mole fraction.</param>
    public static double AfterSuddenRelease(double roomM3, double gasM3, double normal = Normal)
    {
        Guard.Positive(roomM3, nameof(roomM3), "m3");
        Guard.NotNegative(gasM3, nameof(gasM3), "m3");
        Guard.Within(normal, 0, 1, nameof(normal), "");
        return normal * Math.Max(0, 1 - gasM3 / roomM3);
    }

    /// <summary>While gas escapes and fresh air is blown in, mole fraction.</summary>
    /// <param name="roomM3">Room, m3.</param>
    /// <param name="freshAirM3PerS">Fresh air, m3/s.</param>
    /// <param name="leakM3PerS">Gas escaping, m3/s at room conditions.</param>
    /// <param name="timeS">Since the start, s; infinity gives the end state.</param>
    /// <param name="normal">Oxygen before, mole fraction.</param>
    public static double WithAirBlownIn(double roomM3, double freshAirM3PerS, double leakM3PerS, double timeS, double normal = Normal)
    {
        Check(roomM3, freshAirM3PerS, leakM3PerS, timeS, normal);
        var sum = freshAirM3PerS + leakM3PerS;
        return sum == 0 ? normal : normal / sum * (freshAirM3PerS + leakM3PerS * Math.Exp(-sum * timeS / roomM3));
    }

    /// <summary>While gas escapes and a fan draws room air out, or nothing does, mole fraction.</summary>
    /// <param name="roomM3">Room, m3.</param>
    /// <param name="exhaustM3PerS">Exhaust, m3/s; 0 without a fan.</param>
    /// <param name="leakM3PerS">Gas escaping, m3/s at room conditions.</param>
    /// <param name="timeS">Since the start, s; infinity gives the end state.</param>
    /// <param name="normal">Oxygen before, mole fraction.</param>
    public static double WithExhaust(double roomM3, double exhaustM3PerS, double leakM3PerS, double timeS, double normal = Normal)
    {
        Check(roomM3, exhaustM3PerS, leakM3PerS, timeS, normal);
        if (leakM3PerS == 0) return normal;
        return exhaustM3PerS > leakM3PerS
            ? normal * (1 - leakM3PerS / exhaustM3PerS * (1 - Math.Exp(-exhaustM3PerS * timeS / roomM3)))
            : normal * Math.Exp(-leakM3PerS * timeS / roomM3);
    }

    /// <summary>After the escape has ended, mole fraction.</summary>
    /// <param name="roomM3">Room, m3.</param>
    /// <param name="freshAirM3PerS">Fresh air, m3/s.</param>
    /// <param name="atEnd">Oxygen when it ended, mole fraction.</param>
    /// <param name="sinceEndS">Time since then, s.</param>
    /// <param name="normal">Oxygen of the air coming in, mole fraction.</param>
    public static double AfterRelease(double roomM3, double freshAirM3PerS, double atEnd, double sinceEndS, double normal = Normal)
    {
        Check(roomM3, freshAirM3PerS, 0, sinceEndS, normal);
        Guard.Within(atEnd, 0, 1, nameof(atEnd), "");
        return freshAirM3PerS == 0 ? atEnd : normal - (normal - atEnd) * Math.Exp(-freshAirM3PerS * sinceEndS / roomM3);
    }

    /// <summary>The manual's fatality factor: 0 at 18 % oxygen and above, 1 at 8.8 % and below, 10^(6.5 - 76 C) between.</summary>
    /// <param name="oxygen">Mole fraction.</param>
    public static double FatalityFactor(double oxygen)
    {
        Guard.Within(oxygen, 0, 1, nameof(oxygen), "");
        return oxygen >= 0.18 ? 0 : oxygen <= 0.088 ? 1 : Math.Min(1, Math.Pow(10, 6.5 - 76 * oxygen));
    }

    private static void Check(double roomM3, double airM3PerS, double leakM3PerS, double timeS, double normal)
    {
        Guard.Positive(roomM3, nameof(roomM3), "m3");
        Guard.NotNegative(airM3PerS, nameof(airM3PerS), "m3/s");
        Guard.NotNegative(leakM3PerS, nameof(leakM3PerS), "m3/s");
        Guard.Within(timeS, 0, double.PositiveInfinity, nameof(timeS), "s");
        Guard.Within(normal, 0, 1, nameof(normal), "");
    }
}
