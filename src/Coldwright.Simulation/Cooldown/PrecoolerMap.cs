using Coldwright.Machine.Precooling;
using Coldwright.Machine.Streams;
using Coldwright.Numerics;
using Coldwright.Numerics.Interpolation;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// A precooling loop that pulls itself down: its cooling against the temperature at which its refrigerant evaporates, tabulated once, against what the mixture
/// gives up to an evaporator of that temperature. The conductance between the two is set so that, at rest, mixture and loop come to the loop model's own answer.
/// </summary>
internal sealed class PrecoolerMap
{
    // our assumption: 30 s of metal at the evaporator's conductance (0.9 kJ/K for 30 W/K: some 2 kg of copper and refrigerant)
    private const double MetalS = 30, ColdestK = 195, StepK = 12, CutOutRampK = 1;
    private const int Cells = 6;

    private readonly PrecoolerLoop _loop;
    private readonly MonotoneCubic _cooling, _power;
    private readonly double _lowK, _highK, _roomK;
    private readonly double? _cutOutK;

    public PrecoolerMap(PrecoolerLoop loop, PrecoolerMachine machine, double conductanceWPerK, double roomK, CancellationToken cancel)
    {
        (_loop, _roomK, _cutOutK) = (loop, roomK, machine.CutOutK);
        var rows = loop.CapacityTable(Enumerable.Range(0, 30).Select(i => ColdestK + i * StepK).Where(k => k < roomK + StepK), roomK, null, cancel);
        if (rows.Count < 2) throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, double.NaN, "the precooler's loop delivers no cooling between 195 K and the room's temperature"));
        double[] k = [.. rows.Select(r => r.EvaporatingK)];
        (_cooling, _power) = (new(k, [.. rows.Select(r => r.CoolingW)], new bool[k.Length]), new(k, [.. rows.Select(r => r.CompressorPowerW)], new bool[k.Length]));
        (_lowK, _highK, ConductanceWPerK) = (k[0], k[^1], conductanceWPerK);
        MetalJPerK = MetalS * conductanceWPerK;
    }

    /// <summary>Of the evaporator's metal and what is in it, J/K.</summary>
    public double MetalJPerK { get; }
    /// <summary>Nominal, W/K.</summary>
    public double ConductanceWPerK { get; }

    /// <summary>Cooling of the loop, W.</summary>
    public double CoolingW(double evaporatingK) => Share(evaporatingK) * (evaporatingK >= _lowK ? _cooling.At(Math.Min(evaporatingK, _highK)) : Math.Max(0, _cooling.At(_lowK) * (1 - (_lowK - evaporatingK) / 15)));

    /// <summary>Electrical power of its compressor, W.</summary>
    public double PowerW(double evaporatingK) => Share(evaporatingK) * _power.At(Math.Clamp(evaporatingK, _lowK, _highK));

    // at its cut-out the loop runs for a share of the time
    private double Share(double k) => _cutOutK is { } cut ? Math.Clamp((k - cut) / CutOutRampK, 0, 1) : 1;

    /// <summary>Heat that a mole of mixture gives up to an evaporator of one temperature, J/mol.</summary>
    public static double HeatPerMole(StreamTable table, double enthalpy, double pressurePa, double evaporatingK, double conductancePerFlow)
    {
        double h = enthalpy, u = conductancePerFlow / Cells, last = 0;
        for (int i = 0; i < Cells; i++)
        {
            double start = table.Temperature(h, pressurePa, out _), q = last;
            for (int round = 0; round < 2; round++)
            {
                double slope = Math.Max(table.Slope(h + 0.5 * q, pressurePa), 1e-9);
                q = (evaporatingK - start) / slope * -double.ExpM1(-u * slope);
            }
            h += q;
            last = q;
        }
        return enthalpy - h;
    }

    /// <summary>
    /// The loop model's own cooling (W), and the conductance (W/K) and evaporating temperature (K) with which this map gives it, not a number where none does; null where the
    /// model has no answer.
    /// </summary>
    public (double CoolingW, double ConductanceWPerK, double EvaporatingK)? Fitted(StreamTable table, double enthalpy, double pressurePa, double flow, CancellationToken cancel)
    {
        try
        {
            double wanted = _loop.Solve(MixtureLoad.FromTable(table, pressurePa, enthalpy, flow), _roomK, false, cancel).CoolingW;
            double low = _lowK - 14, high = Math.Min(_highK, table.Temperature(enthalpy, pressurePa, out _) - 0.05);
            if (!(CoolingW(high) > wanted) || !(CoolingW(low) < wanted)) return (wanted, double.NaN, double.NaN);
            double k = Numerics.Roots.Brent.Solve(x => CoolingW(x) - wanted, low, high, 1e-9);
            double Off(double ln) => flow * HeatPerMole(table, enthalpy, pressurePa, k, Math.Exp(ln) / flow) - wanted;
            double a = Math.Log(0.02 * ConductanceWPerK), b = Math.Log(50 * ConductanceWPerK), fa = Off(a), fb = Off(b);
            return (wanted, fa < 0 && fb > 0 ? Math.Exp(Numerics.Roots.Brent.Solve(Off, a, fa, b, fb, 1e-10)) : double.NaN, k);
        }
        catch (SolveException)
        {
            return null;
        }
    }
}
