using Coldwright.Machine.Precooling;
using Coldwright.Numerics;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// The precooler near a point where its own model was asked: heat and power linear in the mixture's flow, enthalpy and pressure. Within a small
/// distance the estimate answers, beyond it the model is asked again, so that a search round the loop asks it a few times and not
/// at every trial. Not thread-safe.
/// </summary>
/// <param name="loop">The precooler.</param>
/// <param name="roomK">K.</param>
internal sealed class PrecoolerEstimate(PrecoolerLoop loop, double roomK)
{
    // distances in ln of flow and pressure and in 10 kJ/mol: what is left out goes with their square
    private const double RoughReach = 3e-3, Reach = 1e-4, SlopesServe = 0.3, Step = 2e-3, EnthalpyScale = 1e4;
    // K
    private const double Spare = 25;
    private const double RoughSettled = 1e-6;

    private readonly double[] _at = new double[3], _heat = new double[3], _power = new double[3], _slopesAt = new double[3];
    private Point? _asked;

    /// <summary>The same precooler in a room of that temperature (K); itself where that is its own.</summary>
    public PrecoolerEstimate In(double otherRoomK) => otherRoomK == roomK ? this : new PrecoolerEstimate(loop, otherRoomK);

    /// <summary>Another precooler, little different and on the same refrigerant.</summary>
    public PrecoolerEstimate For(PrecoolerMachine machine, double itsRoomK, CancellationToken cancel) => new(loop.For(machine, cancel), itsRoomK);

    private sealed record Point(LoopTables Tables, PrecoolerResult Result, bool Rough);

    /// <summary>The model's answer where it was last asked, with heat and power carried from there.</summary>
    /// <param name="t">Tables of the mixture.</param>
    /// <param name="before">Enthalpy of the mixture that enters, J/mol.</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="flow">mol/s.</param>
    /// <param name="rough">On the way to an answer.</param>
    /// <param name="cancel">Cancels the work.</param>
    public PrecoolerResult At(LoopTables t, double before, double pressurePa, double flow, bool rough, CancellationToken cancel)
    {
        ReadOnlySpan<double> x = [Math.Log(flow), before / EnthalpyScale, Math.Log(pressurePa)];
        if (_asked is not { } asked || !ReferenceEquals(asked.Tables, t) || asked.Rough && !rough || Distance(x, _at) > (rough ? RoughReach : Reach))
        {
            double settled = rough ? RoughSettled : PrecoolerLoop.Settled;
            // of the mixture's curve as much as the last answer needed, and some more
            double? coldest = _asked is { } last ? Math.Min(last.Result.MixtureOutletK, t.High.Temperature(before, pressurePa, out _)) - Spare : null;
            var load = MixtureLoad.FromTable(t.High, pressurePa, before, flow, coldest);
            PrecoolerResult answer;
            try
            {
                answer = loop.Solve(load, roomK, band: false, cancel, settled);
            }
            catch (SolveException e) when (coldest is not null && e.Report.Status == SolveStatus.Outside)
            {
                coldest = null;
                answer = loop.Solve(load = MixtureLoad.FromTable(t.High, pressurePa, before, flow), roomK, band: false, cancel, settled);
            }
            asked = new Point(t, answer, rough);
            if (_asked is null || Distance(x, _slopesAt) > SlopesServe)
            {
                Slope(0, Step, load.WithFlow(flow * Math.Exp(Step)));
                // less of it: the table ends at the warm side
                Slope(1, -Step, MixtureLoad.FromTable(t.High, pressurePa, before - Step * EnthalpyScale, flow, coldest));
                Slope(2, Step, MixtureLoad.FromTable(t.High, pressurePa * Math.Exp(Step), before, flow, coldest));
                void Slope(int i, double step, MixtureLoad shifted)
                {
                    var there = loop.Solve(shifted, roomK, band: false, cancel, Math.Min(settled, RoughSettled));
                    (_heat[i], _power[i]) = ((there.CoolingW - asked.Result.CoolingW) / step, (there.CompressorPowerW - asked.Result.CompressorPowerW) / step);
                }
                x.CopyTo(_slopesAt);
            }
            x.CopyTo(_at);
            _asked = asked;
        }
        double heat = asked.Result.CoolingW, power = asked.Result.CompressorPowerW;
        for (int i = 0; i < 3; i++) (heat, power) = (heat + _heat[i] * (x[i] - _at[i]), power + _power[i] * (x[i] - _at[i]));
        return asked.Result with { CoolingW = heat, CompressorPowerW = power };
    }

    private static double Distance(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double most = 0;
        for (int i = 0; i < a.Length; i++) most = Math.Max(most, Math.Abs(a[i] - b[i]));
        return most;
    }
}
