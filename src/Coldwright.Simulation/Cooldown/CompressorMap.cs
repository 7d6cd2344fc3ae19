using Coldwright.Machine.Compression;
using Coldwright.Numerics;
using Coldwright.Numerics.Interpolation;

namespace Coldwright.Simulation.Cooldown;

/// <summary>What the compressor does at a duty.</summary>
/// <param name="VolumeFlow">At the suction port, m3/s.</param>
/// <param name="Work">Electrical, over R T at the suction port.</param>
/// <param name="DischargeK">K.</param>
internal readonly record struct CompressorPoint(double VolumeFlow, double Work, double DischargeK);

/// <summary>
/// The loop's compressor as a map of pressure ratio, suction temperature and suction pressure, made once: volume flow, work over R T and discharge temperature
/// change so little with what circulates that one exact run per composition brings the map into line (<see cref="Offset"/>).
/// </summary>
internal sealed class CompressorMap
{
    private static readonly double[] Ratios = [1.25, 1.8, 2.5, 3.5, 5, 7, 10, 15];
    private const double GasConstant = 8.314462618, PressureReach = 1.5, ColdK = 45, WarmK = 6;

    private readonly double[] _suctionK, _lnSuction;
    private readonly MonotoneCubic[,] _flow = new MonotoneCubic[2, 2], _work = new MonotoneCubic[2, 2], _discharge = new MonotoneCubic[2, 2];
    private readonly double _lnHighest;

    /// <param name="run">The compressor's model on the charge's gas.</param>
    /// <param name="suctionPa">About where suction will be, Pa.</param>
    /// <param name="roomK">K.</param>
    public CompressorMap(Func<CompressorDuty, CompressorPerformance> run, double suctionPa, double roomK)
    {
        _suctionK = [roomK - ColdK, roomK + WarmK];
        _lnSuction = [Math.Log(suctionPa / PressureReach), Math.Log(suctionPa * PressureReach)];
        double[] x = [.. Ratios.Select(r => Math.Log(r))];
        _lnHighest = x[^1];
        for (int i = 0; i < 2; i++)
            for (int j = 0; j < 2; j++)
            {
                double[] flow = new double[x.Length], work = new double[x.Length], discharge = new double[x.Length];
                for (int k = 0; k < x.Length; k++)
                {
                    double p = Math.Exp(_lnSuction[j]);
                    // beyond the first ratio that delivers nothing: nothing, at the last work
                    var at = k > 0 && flow[k - 1] == 0 ? null : Try(run, new CompressorDuty { SuctionTemperatureK = _suctionK[i], SuctionPressurePa = p, DischargePressurePa = p * Ratios[k], RoomTemperatureK = roomK });
                    if (at is null && k == 0) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, double.NaN, FormattableString.Invariant($"the compressor delivers nothing from {p / 1e5:0.##} bar absolute even at a pressure ratio of {Ratios[0]}")));
                    flow[k] = at is null ? 0 : at.MolarFlow / at.Suction.MolarDensity;
                    work[k] = at is null ? work[k - 1] : at.ElectricalPowerW / (at.MolarFlow * GasConstant * _suctionK[i]);
                    discharge[k] = at is null ? discharge[k - 1] : at.Discharge.TemperatureK;
                }
                var smooth = new bool[x.Length];
                (_flow[i, j], _work[i, j], _discharge[i, j]) = (new(x, flow, smooth), new(x, work, smooth), new(x, discharge, smooth));
            }
    }

    /// <summary>The map's own answer.</summary>
    public CompressorPoint At(double suctionK, double suctionPa, double dischargePa)
    {
        double lnSuction = Math.Log(suctionPa), ratio = Math.Clamp(Math.Log(dischargePa) - lnSuction, 0.05, _lnHighest);
        double wt = Math.Clamp((suctionK - _suctionK[0]) / (_suctionK[1] - _suctionK[0]), -0.5, 1.3), wp = Math.Clamp((lnSuction - _lnSuction[0]) / (_lnSuction[1] - _lnSuction[0]), -1, 2);
        double Mean(MonotoneCubic[,] m) => (1 - wt) * ((1 - wp) * m[0, 0].At(ratio) + wp * m[0, 1].At(ratio)) + wt * ((1 - wp) * m[1, 0].At(ratio) + wp * m[1, 1].At(ratio));
        return new(Math.Max(0, Mean(_flow)), Mean(_work), Mean(_discharge));
    }

    /// <summary>An exact run over the map: ln of the flows, ln of the works, difference of the discharge temperatures; nothing where the model has no answer.</summary>
    public (double LnFlow, double LnWork, double DischargeK) Offset(Func<CompressorDuty, CompressorPerformance> run, double suctionK, double suctionPa, double dischargePa, double roomK)
    {
        var map = At(suctionK, suctionPa, dischargePa);
        if (!(map.VolumeFlow > 0) || Try(run, new CompressorDuty { SuctionTemperatureK = suctionK, SuctionPressurePa = suctionPa, DischargePressurePa = dischargePa, RoomTemperatureK = roomK }) is not { } at) return default;
        return (Math.Log(at.MolarFlow / at.Suction.MolarDensity / map.VolumeFlow), Math.Log(at.ElectricalPowerW / (at.MolarFlow * GasConstant * suctionK * map.Work)), at.Discharge.TemperatureK - map.DischargeK);
    }

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
