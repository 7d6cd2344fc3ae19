namespace Coldwright.Runs.Sensors;

/// <summary>A limit of error from a standard.</summary>
/// <param name="LimitK">Limit either way, K.</param>
/// <param name="InsideStandard">False where the standard gives no limit for that class and temperature.</param>
public readonly record struct ToleranceLimit(double LimitK, bool InsideStandard);

/// <summary>Limits of error of temperature sensors as bought.</summary>
public static class ToleranceClass
{
    private const double ZeroK = 273.15;

    /// <summary>
    /// Thermocouple wire by IEC 60584-1:2013, table 12: the larger of a fixed limit and a share of |t|. Classes 1 and 2 begin at -40 °C; below, class 3's limit is taken,
    /// which such wire need not keep, so <see cref="ToleranceLimit.InsideStandard"/> is false there.
    /// </summary>
    /// <param name="type">Letter.</param>
    /// <param name="grade">1, 2 or 3.</param>
    /// <param name="temperatureK">K.</param>
    public static ToleranceLimit Thermocouple(ThermocoupleType type, int grade, double temperatureK)
    {
        if (grade is < 1 or > 3) throw new ArgumentOutOfRangeException(nameof(grade), grade, $"grade is {grade}; thermocouple classes are 1, 2 and 3");
        var t = temperatureK - ZeroK;
        var highest = (type, grade) switch
        {
            (ThermocoupleType.K, 1) => 1000,
            (ThermocoupleType.K, 2) => 1200,
            (ThermocoupleType.T, 1 or 2) => 350,
            _ => 40,
        };
        var cold = grade == 3 || t < -40;
        var (least, share) = (type, cold ? 3 : grade) switch
        {
            (ThermocoupleType.K, 1) => (1.5, 0.004),
            (ThermocoupleType.K, 2) => (2.5, 0.0075),
            (ThermocoupleType.K, _) => (2.5, 0.015),
            (_, 1) => (0.5, 0.004),
            (_, 2) => (1.0, 0.0075),
            _ => (1.0, 0.015),
        };
        var inside = t <= highest && (grade == 3 ? t >= -200 : t >= -40);
        return new(Math.Max(least, share * Math.Abs(t)), inside);
    }

    /// <summary>Platinum thermometers by IEC 60751:2008, wire-wound: a fixed part and a share of |t|. AA -50..250 °C, A -100..450 °C, B and C -196..600 °C.</summary>
    /// <param name="grade">AA, A, B or C.</param>
    /// <param name="temperatureK">K.</param>
    public static ToleranceLimit Platinum(string grade, double temperatureK)
    {
        var t = temperatureK - ZeroK;
        var (at0, share, lowest, highest) = grade switch
        {
            "AA" => (0.10, 0.0017, -50, 250),
            "A" => (0.15, 0.002, -100, 450),
            "B" => (0.30, 0.005, -196, 600),
            "C" => (0.60, 0.01, -196, 600),
            _ => throw new ArgumentOutOfRangeException(nameof(grade), grade, $"grade is '{grade}'; platinum classes are AA, A, B and C"),
        };
        return new(at0 + share * Math.Abs(t), t >= lowest && t <= highest);
    }
}
