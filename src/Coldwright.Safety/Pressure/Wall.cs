namespace Coldwright.Safety.Pressure;

/// <summary>What every wall formula asks of its arguments.</summary>
internal static class Wall
{
    public static void Check(double diameterM, double stressPa, double efficiency)
    {
        Guard.Positive(diameterM, "diameter", "m");
        Guard.Positive(stressPa, "allowable stress", "Pa");
        Guard.Within(efficiency, 0.01, 1, "joint efficiency", "");
    }
}
