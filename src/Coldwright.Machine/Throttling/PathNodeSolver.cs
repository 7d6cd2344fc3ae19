using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;

namespace Coldwright.Machine.Throttling;

/// <summary>
/// Nodes at a pressure and an enthalpy. With a mixture, flashes at temperature and pressure near the enthalpy, the rest by a straight line:
/// several times faster than a flash at the enthalpy itself, which pure fluids and stubborn places get.
/// </summary>
internal sealed class PathNodeSolver(Flash flash, TransportModel transport, ThrottleInlet inlet, TwoPhaseViscosity rule)
{
    // J/mol; 2 J/mol are about 0.02 K of a liquid and 0.0002 of a heat of vaporisation
    private const double Close = 2, Linear = 60, Telling = 5;
    private const int MostTries = 5;
    private const double LongestStepK = 12;
    private readonly double[] _z = [.. inlet.Composition];
    private readonly bool _mixture = inlet.Composition.Count(x => x > 0) > 1;
    // J/(mol K) and the ratio of true to estimated slope, each for the phases they were met with: where three phases of few
    // components boil together the capacity is a hundred times that of a liquid
    private readonly Dictionary<string, double> _capacity = [], _slopeRatio = [];
    private bool _warm;

    /// <summary>kg/mol.</summary>
    public double MolarMass { get; } = flash.Model.Substances.Zip(inlet.Composition, (s, x) => s.MolarMass * x).Sum();

    /// <summary>The node at a pressure (Pa) and kinetic energy (J/kg), the search started at a temperature (K).</summary>
    public PathNode At(double pressurePa, double kinetic, double guessK)
    {
        double target = inlet.MolarEnthalpy - kinetic * MolarMass;
        if (!_mixture) return PathNode.Of(flash.PressureEnthalpy(pressurePa, target, _z, guessK), transport, rule);
        if (Near(pressurePa, target, guessK, out var first, out double enthalpy) is { } near) return near;
        var node = PathNode.Of(flash.PressureEnthalpy(pressurePa, target, _z, guessK), transport, rule);
        if (node.Phases == first.Phases) Learn(first, enthalpy, node, target);
        return Sloped(node);
    }

    private PathNode? Near(double p, double target, double t, out PathNode first, out double firstEnthalpy)
    {
        PathNode last = first = default;
        double lastEnthalpy = firstEnthalpy = double.NaN;
        // enthalpy rises with temperature: too cold and too warm, with what is missing there
        double cold = double.NaN, coldRest = 0, warm = double.NaN, warmRest = 0;
        for (int i = 0; i < MostTries; i++)
        {
            if (!flash.TrySolve(t, p, _z, _warm)) return null;
            _warm = true;
            var state = flash.State();
            double h = state.MolarEnthalpy, rest = target - h;
            var node = PathNode.Of(state, transport, rule);
            bool same = i > 0 && node.Phases == last.Phases;
            if (same) Learn(last, lastEnthalpy, node, h);
            if (i == 0) (first, firstEnthalpy) = (node, h);
            double capacity = _capacity.GetValueOrDefault(node.Phases, state.Phases.Sum(x => x.Fraction * x.MolarHeatCapacity));
            if (!(capacity > 0)) return null;
            if (Math.Abs(rest) <= Close)
            {
                var sloped = Sloped(node);
                return sloped with { TemperatureK = t + rest / capacity, Volume = node.Volume + sloped.VolumeSlope * rest / MolarMass };
            }
            if (same && Math.Abs(rest) < Linear && Math.Abs(rest) < 0.3 * Math.Abs(h - lastEnthalpy)) return Between(last, lastEnthalpy, node, h, target);
            (last, lastEnthalpy) = (node, h);
            if (rest > 0) (cold, coldRest) = (t, rest); else (warm, warmRest) = (t, rest);
            double next = t + Math.Clamp(rest / capacity, -LongestStepK, LongestStepK);
            // a step that leaves the bracket used the capacity of other phases: regula falsi, every third time halving
            if (next >= warm || next <= cold) next = cold + (warm - cold) * (i % 3 == 2 ? 0.5 : coldRest / (coldRest - warmRest));
            t = next;
        }
        return null;
    }

    private void Learn(PathNode a, double ha, PathNode b, double hb)
    {
        if (Math.Abs(hb - ha) < Telling) return;
        double capacity = (hb - ha) / (b.TemperatureK - a.TemperatureK), slope = (b.Volume - a.Volume) / (hb - ha) * MolarMass;
        if (capacity > 0 && double.IsFinite(capacity)) _capacity[b.Phases] = capacity;
        if (b.VolumeSlope > 0 && slope > 0) _slopeRatio[b.Phases] = Math.Clamp(slope / b.VolumeSlope, 0.1, 3);
    }

    private PathNode Sloped(PathNode node) => node with { VolumeSlope = node.VolumeSlope * _slopeRatio.GetValueOrDefault(node.Phases, 1) };

    // the straight line through two flashes
    private PathNode Between(PathNode a, double ha, PathNode b, double hb, double target)
    {
        double y = (target - ha) / (hb - ha);
        return b with
        {
            TemperatureK = a.TemperatureK + y * (b.TemperatureK - a.TemperatureK),
            Volume = a.Volume + y * (b.Volume - a.Volume),
            VolumeSlope = Math.Max((b.Volume - a.Volume) / (hb - ha) * MolarMass, 0),
            Quality = b.Quality == 0 ? 0 : Math.Clamp(a.Quality + y * (b.Quality - a.Quality), 0, 1),
            ViscosityPaS = a.ViscosityPaS + y * (b.ViscosityPaS - a.ViscosityPaS),
        };
    }
}
