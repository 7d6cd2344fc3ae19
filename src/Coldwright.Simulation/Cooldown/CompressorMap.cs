using Coldwright.Machine.Compression;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Simulation.Cooldown;

/// <summary>What the compressor does at a duty.</summary>
/// <param name="VolumeFlow">At the suction port, m3/s.</param>
/// <param name="Work">Electrical, over R T at the suction port.</param>
/// <param name="DischargeK">K.</param>
internal readonly record struct CompressorPoint(double VolumeFlow, double Work, double DischargeK);

/// <summary>
/// The loop's compressor as a map of pressure ratio, suction temperature and suction pressure, made node by node where the run comes by: volume flow, work over R T and
/// discharge temperature change so little with what circulates that one exact run per composition brings the map into line (<see cref="Offset"/>). Near the ratio at which
/// nothing is delivered any more everything changes fast, so nodes lie close. Not thread-safe.
/// </summary>
internal sealed class CompressorMap
{
    private const double StepLnRatio = 0.06, LeastRatio = 1.06, MostRatio = 16, GasConstant = 8.314462618, PressureReach = 1.8, ColdK = 45, WarmK = 6;

    private readonly Func<CompressorDuty, CompressorPerformance> _run;
    private readonly double _roomK;
    private readonly double[] _suctionK, _lnSuction;
    private readonly SortedDictionary<int, CompressorPoint[]> _nodes = [];

    /// <param name="run">The compressor's model on the charge's gas.</param>
    /// <param name="suctionPa">About where suction will be, Pa.</param>
    /// <param name="roomK">K.</param>
    public CompressorMap(Func<CompressorDuty, CompressorPerformance> run, double suctionPa, double roomK)
    {
        (_run, _roomK) = (run, roomK);
        _suctionK = [roomK - ColdK, roomK + WarmK];
        _lnSuction = [Math.Log(suctionPa / PressureReach), Math.Log(suctionPa * PressureReach)];
        if (Array.Exists(Node((int)Math.Ceiling(Math.Log(LeastRatio) / StepLnRatio)), p => p.VolumeFlow == 0))
            throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 0, double.NaN, $"the compressor delivers nothing from {SpokenAmount.Pressure(suctionPa, "0.##")} even at a pressure ratio of {LeastRatio}"));
    }

    /// <summary>The map's own answer.</summary>
    public CompressorPoint At(double suctionK, double suctionPa, double dischargePa)
    {
        double lnSuction = Math.Log(suctionPa), place = Math.Clamp(Math.Log(dischargePa) - lnSuction, Math.Log(LeastRatio), Math.Log(MostRatio)) / StepLnRatio;
        double wt = Math.Clamp((suctionK - _suctionK[0]) / (_suctionK[1] - _suctionK[0]), -0.5, 1.3), wp = Math.Clamp((lnSuction - _lnSuction[0]) / (_lnSuction[1] - _lnSuction[0]), -1, 2);
        int i = (int)Math.Floor(place);
        double u = place - i, w = 1 - u, cubic = u * u * (3 - 2 * u);
        CompressorPoint[] before = Node(i - 1), a = Node(i), b = Node(i + 1), after = Node(i + 2);
        double Mean(Func<CompressorPoint, double> of)
        {
            double At(CompressorPoint[] n) => (1 - wt) * ((1 - wp) * of(n[0]) + wp * of(n[1])) + wt * ((1 - wp) * of(n[2]) + wp * of(n[3]));
            double va = At(a), vb = At(b), left = 0.5 * (vb - At(before)), right = 0.5 * (At(after) - va);
            return va + cubic * (vb - va) + u * w * (w * left - u * right);
        }

        return new(Math.Max(0, Mean(p => p.VolumeFlow)), Mean(p => p.Work), Mean(p => p.DischargeK));
    }

    // both pressures at the cold suction, then at the warm one
    private CompressorPoint[] Node(int k)
    {
        if (_nodes.TryGetValue(k, out var known)) return known;
        var made = new CompressorPoint[4];
        for (int c = 0; c < 4; c++)
        {
            double t = _suctionK[c / 2], p = Math.Exp(_lnSuction[c % 2]);
            // where nothing is delivered: nothing, at the work and temperature of the ratio below
            made[c] = Try(_run, new CompressorDuty { SuctionTemperatureK = t, SuctionPressurePa = p, DischargePressurePa = p * Math.Exp(k * StepLnRatio), RoomTemperatureK = _roomK }) is { } at
                ? new(at.MolarFlow / at.Suction.MolarDensity, at.ElectricalPowerW / (at.MolarFlow * GasConstant * t), at.Discharge.TemperatureK)
                : _nodes.LastOrDefault(n => n.Key < k && n.Value[c].VolumeFlow > 0).Value is { } below ? below[c] with { VolumeFlow = 0 } : new(0, 1, t);
        }
        return _nodes[k] = made;
    }

    /// <summary>An exact run over the map: ln of the flows, ln of the works, difference of the discharge temperatures; nothing where the model has no answer.</summary>
    public (double LnFlow, double LnWork, double DischargeK) Offset(Func<CompressorDuty, CompressorPerformance> run, double suctionK, double suctionPa, double dischargePa, double roomK)
    {
        var map = At(suctionK, suctionPa, dischargePa);
        if (!(map.VolumeFlow > 0) || Try(run, new CompressorDuty { SuctionTemperatureK = suctionK, SuctionPressurePa = suctionPa, DischargePressurePa = dischargePa, RoomTemperatureK = roomK }) is not { } at) return default;
        return (Math.Log(at.MolarFlow / at.Suction.MolarDensity / map.VolumeFlow), Math.Log(at.ElectricalPowerW / (at.MolarFlow * GasConstant * suctionK * map.Work)), at.Discharge.TemperatureK - map.DischargeK);
    }

    /// <summary>Temperature of the shell, K; null where the model has no answer.</summary>
    public static double? ShellK(Func<CompressorDuty, CompressorPerformance> run, CompressorDuty duty) => Try(run, duty)?.ShellTemperatureK;

    private static CompressorPerformance? Try(Func<CompressorDuty, CompressorPerformance> run, CompressorDuty duty)
    {
        try
        {
            return run(duty);
        }
        catch (SolveException e) when (e.Report.Status is SolveStatus.NoSolution or SolveStatus.NotConverged)
        {
            return null;
        }
    }
}
