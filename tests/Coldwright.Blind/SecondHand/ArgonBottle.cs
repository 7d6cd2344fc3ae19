namespace Coldwright.Blind.SecondHand;

/// <summary>Argon along its boiling line, by the principle of corresponding states: Lee and Kesler's vapour pressure (AIChE J. 21 (1975) 510), Watson's latent heat (1943). Constants from memory.</summary>
internal static class ArgonBottle
{
    public const double BoilingK = 87.3, FeedPa = 17e5 + CoolerSizes.RoomPa, GasCapacity = 524;
    private const double CriticalK = 150.7, CriticalPa = 48.6e5, LatentPerKg = 161e3;

    public static double Pressure(double k)
    {
        double t = k / CriticalK;
        return CriticalPa * Math.Exp(5.92714 - 6.09648 / t - 1.28862 * Math.Log(t) + 0.169347 * Math.Pow(t, 6));
    }

    public static double Boiling(double pa)
    {
        double a = 75, b = 150;
        for (int i = 0; i < 40; i++) if (Pressure(0.5 * (a + b)) < pa) a = 0.5 * (a + b); else b = 0.5 * (a + b);
        return a;
    }

    public static double Latent(double k) => LatentPerKg * Math.Pow(Math.Max(0.02, 1 - k / CriticalK) / (1 - BoilingK / CriticalK), 0.38);

    /// <summary>J/(kg K) of the liquid at 87.3 K and its rise.</summary>
    public static double LiquidCapacity(double k) => 1115 + 5.5 * (k - BoilingK);

    /// <summary>J/kg over the liquid that boils in the room.</summary>
    public static double Liquid(double k) => (k - BoilingK) * (1115 + 2.75 * (k - BoilingK));

    /// <summary>J/kg of the gas as it is fed: of a perfect one, less what 18 bar take off it (6 J/g at 245 K, less when warmer).</summary>
    public static double Fed(double k) => LatentPerKg + GasCapacity * (k - BoilingK) - 6000 * Math.Pow(245 / k, 2);

    /// <summary>kg/m3.</summary>
    public static double LiquidDensity(double k) => 536 * (1 + 1.75 * Math.Pow(1 - k / CriticalK, 1.0 / 3) + 0.75 * (1 - k / CriticalK));
}
