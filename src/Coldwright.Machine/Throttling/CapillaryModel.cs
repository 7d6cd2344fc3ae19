using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Flow;
using Coldwright.Numerics;
using Coldwright.Numerics.Roots;

namespace Coldwright.Machine.Throttling;

/// <summary>
/// Adiabatic capillary: homogeneous-equilibrium march with wall friction, entrance loss, kinetic energy and choking at the exit.
/// Inlet liquid, two liquids, two phases or gas. Theory, sources and measured agreement: docs/theory/throttle.md. Not thread-safe:
/// one object per thread.
/// </summary>
/// <param name="flash">Flash of the fluid's model.</param>
/// <param name="transport">Transport properties of the same model.</param>
public sealed class CapillaryModel(Flash flash, TransportModel transport)
{
    private const int MostPasses = 5;
    private const double GoodVolume = 4e-3, GoodFlux = 1e-3, GoodDelayedFlux = 4e-3, LowestFluxRatio = 1e-4;

    private readonly PathMemory _paths = new();

    /// <summary>How finely the march is made; the default errs by less than 0.1 % in flow.</summary>
    public CapillaryResolution Resolution { get; init; } = CapillaryResolution.Default;

    /// <summary>Agreement of the homogeneous march with measured flows: the band that the results carry.</summary>
    public static Correlation MarchCorrelation { get; } = new(
        "Homogeneous-equilibrium capillary march",
        "scatter of published correlations and data against it, docs/theory/throttle.md",
        0.08,
        "single refrigerants, bore 0.6 to 2 mm, length 0.5 to 5 m; nothing measured was found for wide-boiling mixtures");

    /// <summary>The flow through a tube of given length.</summary>
    /// <param name="tube">The tube, its length given.</param>
    /// <param name="inlet">What arrives.</param>
    /// <param name="backPressurePa">Pressure behind the tube, Pa, below that of the inlet and at least a two-thousandth of it.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">An input outside its range.</exception>
    /// <exception cref="SolveException">No answer; the report says why.</exception>
    public CapillaryResult Flow(CapillaryTube tube, ThrottleInlet inlet, double backPressurePa, CancellationToken cancel = default)
    {
        if (tube.LengthM is not { } length) throw new ArgumentException("LengthM is not given; the flow needs it, in m", nameof(tube));
        return Solve(tube, inlet, backPressurePa, march => FluxFor(march, length), length, cancel);
    }

    /// <summary>The length at which a tube passes a given flow with a given pressure behind it, or is choked on the way to it.</summary>
    /// <param name="tube">The tube; a length in it is not used.</param>
    /// <param name="inlet">What arrives.</param>
    /// <param name="backPressurePa">Pressure behind the tube, Pa.</param>
    /// <param name="massFlowKgPerS">All tubes together, kg/s, above 0.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">An input outside its range.</exception>
    /// <exception cref="SolveException">No answer, such as a flow that the entrance alone would choke.</exception>
    public CapillaryResult Length(CapillaryTube tube, ThrottleInlet inlet, double backPressurePa, double massFlowKgPerS, CancellationToken cancel = default)
    {
        double flux = ThrottleGuard.Positive(massFlowKgPerS, nameof(massFlowKgPerS), "kg/s") / tube.AreaM2;
        return Solve(tube, inlet, backPressurePa, march => Given(march, flux, tube), null, cancel);
    }

    private CapillaryResult Solve(CapillaryTube tube, ThrottleInlet inlet, double back, Func<CapillaryMarch, double> fluxOf, double? length, CancellationToken cancel, bool afresh = false)
    {
        tube.Check();
        inlet.Check(flash.Model.Count);
        ThrottleGuard.Within(back, inlet.PressurePa / 2000, inlet.PressurePa * (1 - 1e-6), "backPressurePa", "Pa");
        var warnings = new List<string>(flash.Model.Warnings);
        var table = new PathTabulator(flash, transport, inlet, tube.Viscosity, cancel);
        var near = afresh ? null : _paths.Near(inlet, back);
        List<PathNode> atRest = table.Tabulate(back, Resolution.Intervals(inlet.PressurePa, back), _ => 0, near, own: false);
        if (near is null && table.EndedEarly is null) _paths.Keep(inlet, atRest);
        string? ended = table.EndedEarly;
        var delay = new DelayAllowance(tube, inlet, flash, transport);
        var grid = ExpansionGrid.Build(atRest, _ => 0, null, Resolution.CellsPerNode);
        double flux = 0, error = 0;
        CapillaryMarch march;
        for (int pass = 0; ; pass++)
        {
            double before = flux;
            var used = grid.Delayed(delay.UnderpressurePa);
            march = new CapillaryMarch(used, tube);
            flux = fluxOf(march);
            double found = march.Run(flux);
            bool resolved = march.Choked || used.Pressure[^1] <= back * (1 + 1e-9);
            if (!resolved && used.Pressure[^1] <= atRest[^1].PressurePa * (1 + 1e-9))
                throw new SolveException(new SolveReport(SolveStatus.Outside, pass, double.NaN, $"the fluid's properties end before the tube's exit: {ended}"));
            double exit = march.ExitPressurePa;
            bool steady = Math.Abs(flux - before) < (delay.Active ? GoodDelayedFlux : GoodFlux) * flux;
            delay.Update(grid, march, flux);
            if (resolved && pass > 0 && (steady || !delay.Active))
            {
                var node = Exit(table, used, march, flux, out error);
                if (error < GoodVolume || pass >= MostPasses)
                {
                    // the phases were others than on the path close by after all
                    if (error > 10 * GoodVolume && near is not null) return Solve(tube, inlet, back, fluxOf, length, cancel, afresh: true);
                    if (error > 10 * GoodVolume)
                        throw new SolveException(new SolveReport(SolveStatus.NotConverged, pass, error, FormattableString.Invariant($"the capillary's march did not close: exit volume off by {error:0.0000} at {exit / 1e5:0.###} bar")));
                    warnings.AddRange(delay.Warnings);
                    warnings.AddRange(CapillaryWarnings.For(tube, inlet, used, march, flux, ended));
                    return CapillaryReport.Of(tube, inlet, used, march, flux, length ?? found, back, delay.UnderpressurePa, node, warnings, table.MolarMass);
                }
            }
            if (pass >= MostPasses + 3)
                throw new SolveException(new SolveReport(SolveStatus.NotConverged, pass, Math.Abs(flux / before - 1), FormattableString.Invariant(
                    $"the capillary's flow did not settle: {flux:0.#} after {before:0.#} kg/(m2 s), exit {exit / 1e5:0.###} bar, underpressure {delay.UnderpressurePa / 1e5:0.###} bar{(resolved ? "" : ", exit beyond the table")}")));
            // nodes anew at the kinetic energy found, with room below the exit
            var profile = KineticProfile.Of(march, flux);
            double end = Math.Max(back, exit * (resolved ? 0.8 : 0.4));
            var nodes = table.Tabulate(end, Resolution.Intervals(inlet.PressurePa, end), profile.At, atRest);
            ended ??= table.EndedEarly;
            grid = ExpansionGrid.Build(nodes, profile.At, atRest, Resolution.CellsPerNode);
        }
    }

    // the exit from a flash of its own, and how far its volume is from the march's
    private static PathNode Exit(PathTabulator table, ExpansionGrid grid, CapillaryMarch march, double flux, out double error)
    {
        int i = march.Last;
        double v = march.VolumeAt(i);
        var node = table.At(march.PressureAt(i), 0.5 * flux * flux * v * v, grid.Temperature[i]);
        // a march that ends in delayed flashing has no equilibrium volume to be compared with
        error = grid.Late(i) ? 0 : Math.Abs(node.Volume / v - 1);
        return node;
    }

    private static double Given(CapillaryMarch march, double flux, CapillaryTube tube)
    {
        if (flux < march.GreatestFlux) return flux;
        throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, flux / march.GreatestFlux - 1, FormattableString.Invariant(
            $"a bore of {tube.BoreM * 1e3:0.###} mm passes at most {march.GreatestFlux * tube.AreaM2 * 3600:0.####} kg/h even without length; {flux * tube.AreaM2 * 3600:0.####} kg/h asked for: take a wider bore")));
    }

    private static double FluxFor(CapillaryMarch march, double length)
    {
        double high = march.GreatestFlux * (1 - 1e-9), low = high;
        if (march.Run(high) >= length) return high;
        double longest = 0;
        while (longest < length)
        {
            low *= 0.6;
            if (low < LowestFluxRatio * LowestFluxRatio * high)
                throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, longest, FormattableString.Invariant($"no flow found for a capillary of {length:0.###} m")));
            longest = march.Run(low);
        }
        double root = Brent.Solve(x => Math.Log(Math.Max(march.Run(Math.Exp(x)), 1e-12 * length) / length), Math.Log(low), Math.Log(Math.Min(low / 0.6, high)), 1e-10);
        return Math.Exp(root);
    }
}
