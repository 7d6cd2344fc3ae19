using S = Coldwright.Blind.SecondHand.CoolerSizes;

namespace Coldwright.Blind.SecondHand;

/// <summary>Where in the loop which temperature reigns, and what it holds there.</summary>
internal sealed class LoopZones(double volumes, double roomK)
{
    /// <summary>Temperature of each zone, K, its volume, m3, and whether it is on the high side.</summary>
    public List<(double K, double M3, bool High)> All { get; } = [];

    /// <summary>All at the room's temperature.</summary>
    public void Warm() => Along([(S.LengthM, roomK, roomK)], roomK, roomK);

    /// <summary>Along the recuperator (metres, high and low stream) and in the coil.</summary>
    public void Along(IEnumerable<(double M, double HighK, double LowK)> pieces, double coilK, double returnK)
    {
        All.Clear();
        foreach (var (m, high, low) in pieces)
        {
            All.Add((high, m * S.InnerM2, true));
            All.Add((low, m * S.AnnulusM2, false));
        }
        All.Add((coilK, volumes * (S.CoilBoreM2 * S.CoilLengthM + 25e-6), false));
        All.Add((roomK, volumes * S.WarmHighM3, true));
        All.Add((0.5 * (returnK + roomK), volumes * S.WarmLowM3, false));
    }

    /// <summary>mol at two pressures.</summary>
    public double Moles(SoaveTable table, double highPa, double lowPa)
    {
        double sum = 0;
        foreach (var (k, m3, high) in All) sum += m3 * table.Content(k, high ? highPa : lowPa);
        return sum;
    }

    /// <summary>mol of each substance.</summary>
    public double[] Held(SoaveTable table, double highPa, double lowPa)
    {
        var sum = new double[table.Z.Length];
        foreach (var (k, m3, high) in All) table.Held(k, high ? highPa : lowPa, m3, sum);
        return sum;
    }
}
