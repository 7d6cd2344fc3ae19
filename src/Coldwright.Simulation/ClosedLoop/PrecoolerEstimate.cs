using Coldwright.Machine.Precooling;
using Coldwright.Numerics;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>
/// The precooler round the loop: its own model where it must be, and near an answer of that the model's tables with their corrections from there,
/// so that a search asks the model a few times and not at every trial. Not thread-safe.
/// </summary>
/// <param name="loop">The precooler.</param>
/// <param name="roomK">K.</param>
internal sealed class PrecoolerEstimate(PrecoolerLoop loop, double roomK)
{
    // K
    private const double Spare = 25;
    private const double RoughSettled = 1e-6;
    // in ln of the pressures, chosen by trial: how far from where it was found the correction of the compressor's table is taken as the same
    private const double Serves = 1e-5, RoughServes = 0.05;

    private PrecoolerResult? _last;
    private bool _rough;

    /// <summary>The same precooler in a room of that temperature (K); itself where that is its own.</summary>
    public PrecoolerEstimate In(double otherRoomK) => otherRoomK == roomK ? this : new PrecoolerEstimate(loop, otherRoomK);

    /// <summary>Another precooler, little different and on the same refrigerant.</summary>
    public PrecoolerEstimate For(PrecoolerMachine machine, double itsRoomK, CancellationToken cancel) => new(loop.For(machine, cancel), itsRoomK);

    /// <summary>The model's answer where it was last asked, with heat and power as they are here.</summary>
    /// <param name="t">Tables of the mixture.</param>
    /// <param name="before">Enthalpy of the mixture that enters, J/mol.</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="flow">mol/s.</param>
    /// <param name="care">How carefully.</param>
    /// <param name="cancel">Cancels the work.</param>
    public PrecoolerResult At(LoopTables t, double before, double pressurePa, double flow, LoopCare care, CancellationToken cancel)
    {
        bool exact = care == LoopCare.Exact;
        // of the mixture's curve as much as the last answer needed, and some more
        double? coldest = _last is { } known ? Math.Min(known.MixtureOutletK, t.High.Temperature(before, pressurePa, out _)) - Spare : null;
        var load = MixtureLoad.FromTable(t.High, pressurePa, before, flow, coldest);
        if (_last is { } last && !(exact && _rough) && loop.Nearby(load, roomK, exact ? Serves : RoughServes) is { } near)
            return last with { CoolingW = near.CoolingW, CompressorPowerW = near.CompressorPowerW };
        _rough = care == LoopCare.Rough;
        double settled = _rough ? RoughSettled : PrecoolerLoop.Settled;
        try
        {
            _last = loop.Solve(load, roomK, band: false, cancel, settled);
        }
        catch (SolveException e) when (coldest is not null && e.Report.Status == SolveStatus.Outside)
        {
            _last = loop.Solve(MixtureLoad.FromTable(t.High, pressurePa, before, flow), roomK, band: false, cancel, settled);
        }
        return _last;
    }
}
