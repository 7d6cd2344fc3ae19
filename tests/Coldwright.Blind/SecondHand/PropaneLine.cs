namespace Coldwright.Blind.SecondHand;

/// <summary>
/// The precooler as a line of capacity against the temperature at which its propane evaporates: swept volume, vapour pressure between the normal boiling point and the critical
/// point, latent heat after Watson (1943), and a condenser that warms with what it gives off. Constants of propane from memory.
/// </summary>
internal sealed class PropaneLine
{
    private const double BoilingK = 231.0, CriticalK = 369.8, CriticalPa = 42.5e5, LatentPerKg = 426e3, LiquidCapacity = 2600, GasCapacity = 1550, MassKg = 0.0441;
    private const double SweptM3S = 3.8e-6 * 48.3, Clearance = 0.04, Superheat = 10, CondenserWPerK = 52, Subcooling = 4;

    public static double Pressure(double k) => 101325 * Math.Exp(Math.Log(CriticalPa / 101325) * (1 / BoilingK - 1 / k) / (1 / BoilingK - 1 / CriticalK));

    private static double Latent(double k) => LatentPerKg * Math.Pow((1 - k / CriticalK) / (1 - BoilingK / CriticalK), 0.38);

    /// <summary>W carried off and W of electricity.</summary>
    /// <param name="k">Evaporating temperature, K.</param>
    /// <param name="roomK">Room, K.</param>
    /// <param name="flow">Factor on what the compressor moves.</param>
    public (double CoolingW, double PowerW) At(double k, double roomK, double flow)
    {
        double condensing = roomK + 12, cooling = 0, power = 0;
        for (int i = 0; i < 5; i++)
        {
            double low = Pressure(k), ratio = Pressure(condensing) / low, share = Math.Max(0.05, 0.95 - Clearance * (Math.Pow(ratio, 0.88) - 1));
            double kgS = flow * SweptM3S * share * low * MassKg / (8.314 * (k + Superheat + 10) * 0.96);
            cooling = kgS * (Latent(k) + GasCapacity * 0.6 * Superheat - LiquidCapacity * (condensing - Subcooling - k) * 0.93);
            power = 12 + kgS * 8.314 / MassKg * (k + 20) / 0.12 * (Math.Pow(ratio, 0.12) - 1) / 0.45;
            condensing = roomK + 2 + (cooling + power) / CondenserWPerK;
        }
        return (Math.Max(0, cooling), power);
    }
}
