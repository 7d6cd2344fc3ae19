using Coldwright.Machine.Compression;
using Coldwright.Numerics;
using Coldwright.Numerics.Interpolation;

namespace Coldwright.Machine.Precooling;

/// <summary>
/// A compressor on its refrigerant, tabulated coarsely over suction pressure and pressure ratio: good enough to find the way
/// with; the loop brings it to the model's own answer at the solution.
/// </summary>
internal sealed class CompressorTable
{
    private const double GasConstant = 8.314462618, Superheat = 10, NominalRoomK = 298.15;
    private const int Rows = 5;
    private static readonly double[] Ratios = [1.15, 1.6, 2.3, 3.3, 4.7, 6.7, 9.5, 13.5, 19, 27];

    private readonly Func<CompressorDuty, CancellationToken, CompressorPerformance> _run;
    private readonly double[] _lnSuction;
    private readonly MonotoneCubic[] _flow, _work, _shell;

    private string _refused = "";

    public CompressorTable(PrecoolerMachine machine, LoopRefrigerant fluid, double[] z, double warmestK, CancellationToken cancel)
    {
        _run = Model(machine, fluid, z);
        (_lnSuction, _flow, _work, _shell) = (new double[Rows], new MonotoneCubic[Rows], new MonotoneCubic[Rows], new MonotoneCubic[Rows]);
        double low = fluid.LnLowest, high = Math.Min(fluid.LnPressure(warmestK), fluid.LnHighest - Math.Log(1.3));
        LnWarmest = high;
        double top = Math.Exp(fluid.LnHighest);
        double[] x = [.. Ratios.Select(r => Math.Log(r))];
        for (int i = 0; i < Rows; i++)
        {
            _lnSuction[i] = low + (high - low) * i / (Rows - 1);
            double[] flow = new double[x.Length], work = new double[x.Length], shell = new double[x.Length];
            double suction = Math.Exp(_lnSuction[i]), suctionK = fluid.Dew(_lnSuction[i]) + Superheat;
            double density = fluid.Gas(suctionK, suction).MolarDensity;
            for (int j = 0; j < x.Length; j++)
            {
                // beyond the highest condensing pressure the table goes on as it ended, less and less flow
                bool known = Ratios[j] * suction < 1.2 * top && (j == 0 || flow[j - 1] > 0);
                var at = known ? Try(new CompressorDuty { SuctionTemperatureK = suctionK, SuctionPressurePa = suction, DischargePressurePa = Ratios[j] * suction, RoomTemperatureK = NominalRoomK }, cancel) : null;
                if (at is null && j == 0) throw new ArgumentException(FormattableString.Invariant(
                    $"the precooler's compressor delivers nothing on this refrigerant even from {suction / 1e5:0.###} to {Ratios[0] * suction / 1e5:0.###} bar absolute: {_refused}"), nameof(machine));
                flow[j] = at is not null ? at.MolarFlow / density : Ratios[j] * suction < 1.2 * top ? 0 : 0.8 * flow[j - 1];
                work[j] = at is not null ? at.ElectricalPowerW / (at.MolarFlow * GasConstant * suctionK) : work[j - 1];
                shell[j] = at is not null ? at.ShellHeatW / at.ElectricalPowerW : shell[j - 1];
                GreatestFlow = Math.Max(GreatestFlow, flow[j]);
            }
            _flow[i] = new MonotoneCubic(x, flow, new bool[x.Length]);
            _work[i] = new MonotoneCubic(x, work, new bool[x.Length]);
            _shell[i] = new MonotoneCubic(x, shell, new bool[x.Length]);
        }
    }

    private CompressorTable(CompressorTable like, PrecoolerMachine machine, LoopRefrigerant fluid, double[] z)
    {
        _run = Model(machine, fluid, z);
        (_lnSuction, _flow, _work, _shell, GreatestFlow, LnWarmest) = (like._lnSuction, like._flow, like._work, like._shell, like.GreatestFlow, like.LnWarmest);
    }

    /// <summary>Another compressor, little different, that this table shows the way for as well.</summary>
    public CompressorTable For(PrecoolerMachine machine, LoopRefrigerant fluid, double[] z) => new(this, machine, fluid, z);

    private static Func<CompressorDuty, CancellationToken, CompressorPerformance> Model(PrecoolerMachine machine, LoopRefrigerant fluid, double[] z) =>
        machine.Map is { } map ? new MappedCompressor(map, machine.Compressor, fluid.Model, z).Run : new HermeticCompressor(machine.Compressor, fluid.Model, z).Run;

    /// <summary>Greatest volume flow of the table, m3/s.</summary>
    public double GreatestFlow { get; }
    /// <summary>ln of the highest suction pressure.</summary>
    public double LnWarmest { get; }

    /// <summary>The model's own answer.</summary>
    public CompressorPerformance Run(double suctionK, double suctionPa, double dischargePa, double roomK, CancellationToken cancel) =>
        _run(new CompressorDuty { SuctionTemperatureK = suctionK, SuctionPressurePa = suctionPa, DischargePressurePa = dischargePa, RoomTemperatureK = roomK }, cancel);

    /// <summary>Volume flow at the suction port (m3/s), electrical work (J/mol), share of it that the shell gives to the room.</summary>
    public (double VolumeFlow, double Work, double ShellShare) At(double lnSuction, double lnDischarge, double suctionK)
    {
        double at = Math.Clamp((lnSuction - _lnSuction[0]) / (_lnSuction[^1] - _lnSuction[0]), 0, 1) * (Rows - 1), ratio = lnDischarge - lnSuction;
        int i = Math.Min((int)at, Rows - 2);
        double w = at - i;
        double Mean(MonotoneCubic[] of) => (1 - w) * of[i].At(ratio) + w * of[i + 1].At(ratio);
        double beyond = Math.Max(0, ratio - Math.Log(Ratios[^1]));
        return (Mean(_flow) * Math.Exp(-3 * beyond), Mean(_work) * GasConstant * suctionK, Mean(_shell));
    }

    // null: nothing delivered there, which is an answer too
    private CompressorPerformance? Try(CompressorDuty duty, CancellationToken cancel)
    {
        try
        {
            return _run(duty, cancel);
        }
        catch (SolveException e) when (e.Report.Status is SolveStatus.NoSolution or SolveStatus.NotConverged)
        {
            _refused = e.Message;
            return null;
        }
    }
}
