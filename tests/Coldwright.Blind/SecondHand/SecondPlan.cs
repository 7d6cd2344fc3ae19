namespace Coldwright.Blind.SecondHand;

/// <summary>What the builder does on the day, s after the start.</summary>
/// <param name="FeedOnS">Feed opened.</param>
/// <param name="FeedOffS">Feed shut.</param>
/// <param name="OpenS">Drain opened.</param>
/// <param name="StopS">Compressor stopped.</param>
/// <param name="EndS">End of the warm-up.</param>
/// <param name="RoomK">Room at the start, K.</param>
/// <param name="RoomDriftK">How much warmer it gets by the end.</param>
public sealed record SecondPlan(double FeedOnS, double FeedOffS, double OpenS, double StopS, double EndS, double RoomK, double RoomDriftK)
{
    /// <summary>How long it stands warm before the start, s.</summary>
    public const double RestS = 900;
    /// <summary>Drain open for so long, s.</summary>
    public const double DrainS = 420;
    /// <summary>Every day's stop, s after the start: one set of the model's runs serves all.</summary>
    public const double StopAtS = 27000;
    /// <summary>Latest end of a warm-up, s.</summary>
    public const double LatestS = 34200;

    /// <summary>Draws a day.</summary>
    public static SecondPlan Draw(Random random)
    {
        double on = 60 * Math.Round(285 + 45 * random.NextDouble()), off = on + 60 * Math.Round(16 + 14 * random.NextDouble());
        return new SecondPlan(on, off, off + 60 * Math.Round(12 + 15 * random.NextDouble()), StopAtS, StopAtS + 60 * Math.Round(50 + 70 * random.NextDouble()), 293.15 + 2 * (random.NextDouble() - 0.5), -1 + 3.5 * random.NextDouble());
    }

    /// <summary>The room at a moment, K: warmer towards the end, as the machine heats it.</summary>
    public double Room(double s) => RoomK + RoomDriftK * Math.Clamp(s / EndS, 0, 1);
}
