namespace Coldwright.Blind.Physics;

/// <summary>Sizes of the blind machine, worked out from its file by hand. SI.</summary>
internal static class Sizes
{
    public const int Cells = 24, Foam = 8;
    public const double HighBoreM = 7.9e-3, HighOutsideM = 9.525e-3, LowBoreM = 17.1e-3, LengthM = 16, RecuperatorKg = 10.4, LoadKg = 1.52, CoilBoreM = 4.83e-3, CoilLengthM = 3.5, CoilOutsideM = 6.35e-3;
    public const double HighAreaM2 = Math.PI / 4 * HighBoreM * HighBoreM, LowAreaM2 = Math.PI / 4 * (LowBoreM * LowBoreM - HighOutsideM * HighOutsideM);
    public const double BufferM3 = 10e-3, WarmHighM3 = 0.45e-3, WarmLowM3 = 0.7e-3, ColdLinesM3 = 0.03e-3, CoilM3 = Math.PI / 4 * CoilBoreM * CoilBoreM * CoilLengthM;
    public const double OpeningPa = 19e5 + 1.008e5, FullyOpenPa = 20.5e5 + 1.008e5, ValveM2 = Math.PI / 4 * 2e-3 * 2e-3, BleedM2 = Math.PI / 4 * 0.4e-3 * 0.4e-3, BleedLengthM = 1.2, BleedBoreM = 0.4e-3;
    public const double SweptM3PerS = 10.8e-6 * 47.5, SuctionHeatingK = 8, SlipMolPerSPa = 9e-9, RoomK = 293.15, AftercoolerK = 6, WarmExchangerWPerK = 30, EvaporatorWPerK = 30, EvaporatorJPerK = 900;
    public const double FansW = 58, ChargeKg = 0.32, VesselM3 = 0.56e-3, InsideM2 = 0.4408, OutsideM2 = 2.397, WallM = 0.18, FoamJPerM3K = 45e3;

    /// <summary>Copper, J/(kg K): NIST's values, rounded, straight between.</summary>
    public static double Copper(double k)
    {
        double[] t = [60, 80, 100, 150, 200, 250, 300, 350], c = [137, 203, 252, 313, 356, 374, 385, 392];
        int i = 0;
        while (i < t.Length - 2 && k > t[i + 1]) i++;
        return c[i] + (k - t[i]) / (t[i + 1] - t[i]) * (c[i + 1] - c[i]);
    }
}
