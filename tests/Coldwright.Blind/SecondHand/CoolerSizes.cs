namespace Coldwright.Blind.SecondHand;

/// <summary>Sizes of the cooler for the second hand, read off its file once more. SI. What the file leaves open (wall of a tube, mass of a valve) is from memory or our assumption.</summary>
internal static class CoolerSizes
{
    public const double RoomPa = 1.008e5, ChargeKg = 0.32;
    // recuperator: 3/8 in in 3/4 in, 16 m
    public const double LengthM = 16, InnerBoreM = 7.9e-3, InnerOutsideM = 9.525e-3, OuterBoreM = 16.92e-3, HalfKg = 5.6;
    public const double InnerM2 = Math.PI / 4 * InnerBoreM * InnerBoreM, AnnulusM2 = Math.PI / 4 * (OuterBoreM * OuterBoreM - InnerOutsideM * InnerOutsideM), AnnulusHydraulicM = OuterBoreM - InnerOutsideM;
    public const double ReturnDropPa = 0.2e5, ReturnDropAtMolS = 0.09, WallM2 = 80e-6, WallConductivity = 300;
    // coil: 1/4 in, 3.5 m; vessel 2-1/8 in, 320 mm, caps
    public const double CoilBoreM = 4.83e-3, CoilLengthM = 3.5, CoilBoreM2 = Math.PI / 4 * CoilBoreM * CoilBoreM, CoilInsideM2 = Math.PI * CoilBoreM * CoilLengthM, CoilOutsideM2 = Math.PI * 6.35e-3 * CoilLengthM;
    public const double LoadKg = 1.55, VesselM3 = 0.57e-3, BrimShare = 0.9;
    // capillary, compressor
    public const double CapillaryBoreM = 0.9e-3, CapillaryLengthM = 1.7, CapillaryOverCoilM = 0.9 / 50, SweptM3S = 10.8e-6 * 47.5, Clearance = 0.015, SuctionHeatingK = 8, MotorEfficiency = 0.82, ShellShare = 0.85, AftercoolerDropPa = 0.15e5;
    public const double AftercoolerK = 6, WarmExchangerWPerK = 30, FansW = 58;
    // volumes outside recuperator and coil
    public const double WarmHighM3 = 0.40e-3, WarmLowM3 = 0.75e-3, BufferM3 = 10.1e-3;
    public const double OpeningPa = 19e5 + RoomPa, FullyOpenPa = 20.5e5 + RoomPa, ValveM2 = Math.PI / 4 * 4e-6, BleedBoreM = 0.4e-3, BleedLengthM = 1.2;
    // box 0.26 x 0.22 x 0.34 m inside, wall 180 mm
    public static readonly double[] BoxM = [0.26, 0.22, 0.34];
    public const double WallM = 0.18;
    // wires and rods; tubes of feed, relief and drain: 22 mm2 of copper through the wall, a fifth of it shunted by the foam
    public const double WireWPerK = 0.0055 + 0.8 * 22e-6 * WallConductivity / WallM;

    /// <summary>Copper, J/(kg K): Debye's function at 315 K, with what the metal expands on top (from memory; 386 at 300 K, 254 at 100 K).</summary>
    public static double Copper(double k)
    {
        // 3 R / M = 392.5; Thirring's series, good above a fifth of 315 K
        double u = 315 / Math.Max(k, 60), q = u * u;
        return 392.5 * (1 - q / 20 + q * q / 560 - q * q * q / 18144 + q * q * q * q / 633600) * (1 + 1.0e-4 * k);
    }
}
