using Coldwright.Machine.Streams;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;
using Coldwright.Quantities;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// The throttle as ln of its flow against the temperature before it, made node by node where the cooldown comes by: at each node the part's own model and its slopes with both
/// pressures; between the nodes a cubic with continuous slope. Boiling liquid chokes the flow, so that it bends sharply where its liquid begins to boil: near there nodes stand by
/// their distance from it, close on both sides, and those next to it belong to one composition; further off they stand by their temperature. One exact run per composition
/// brings the map into line (<see cref="Offset"/>); a node made later is set down by what that run found, so that it stands level with its neighbours. Not thread-safe.
/// </summary>
/// <param name="model">The part's model: inlet and back pressure (Pa) to mol/s and choked.</param>
internal sealed class ThrottleMap(Func<ThrottleInlet, double, (double MolarFlow, bool Choked)> model)
{
    // near boiling nodes lie evenly in asinh of the distance in K, elsewhere evenly in K; from one to the other over the kelvins between
    private const double Step = 0.4, StepK = 8, NearK = 16, FarK = 26, PressureStep = 4e-3;
    private const int Next = 7;
    private readonly SortedDictionary<int, Node> _near = [], _far = [];
    private Boiling? _lastBoiling;

    internal readonly record struct Node(double Value, double ByHigh, double ByBack);

    /// <summary>Where liquid begins to boil: K at a pressure, and its slope with ln of the pressure.</summary>
    internal readonly record struct Boiling(double K, double LnPa, double ByLn)
    {
        public double At(double pressurePa) => K + ByLn * (Math.Log(pressurePa) - LnPa);
    }

    /// <summary>Nodes of one composition, by their place; and where its liquid boils, as far as tables made before know it, for tables that end above.</summary>
    internal sealed class Nodes : SortedDictionary<int, Node>
    {
        public Boiling? Guess { get; set; }
    }

    /// <summary>Runs of the part's model.</summary>
    public int Runs { get; private set; }

    /// <summary>ln of the flow in mol/s by the map.</summary>
    /// <param name="table">High side of what circulates.</param>
    /// <param name="z">Its mole fractions.</param>
    /// <param name="temperatureK">Before the throttle, K.</param>
    /// <param name="highPa">Before it, Pa.</param>
    /// <param name="backPa">Behind it, Pa.</param>
    /// <param name="next">Nodes next to boiling, of this composition.</param>
    /// <param name="offset">What the part's model gives over the map here, as far as it is known; 0 where it is not.</param>
    public double LnFlow(StreamTable table, IReadOnlyList<double> z, double temperatureK, double highPa, double backPa, Nodes next, double offset)
    {
        double k = Math.Clamp(temperatureK, table.ColdestK, table.WarmestK), lnHigh = Math.Log(highPa), lnBack = Math.Log(backPa), share = 0, near = 0;
        double At(in Node n) => n.Value + n.ByHigh * lnHigh + n.ByBack * lnBack;
        if (BoilingK(table, highPa, next) is { } boiling && k - boiling < FarK)
        {
            double off = k - boiling, u = Math.Clamp((FarK - off) / (FarK - NearK), 0, 1);
            share = u * u * (3 - 2 * u);
            // no slope is taken across the bend
            near = Cubic(Math.Asinh(off) / Step, true, i =>
            {
                var nodes = Math.Abs(i) <= Next ? next : _near;
                if (!nodes.TryGetValue(i, out var n)) n = nodes[i] = Make(p => BoilingK(table, p, next)!.Value + Math.Sinh(i * Step), table, z, highPa, backPa, offset);
                return At(n);
            });
            if (share == 1) return near;
        }
        double far = Cubic(k / StepK, false, i =>
        {
            if (!_far.TryGetValue(i, out var n)) n = _far[i] = Make(_ => i * StepK, table, z, highPa, backPa, offset);
            return At(n);
        });
        return far + share * (near - far);
    }

    /// <summary>True next to where liquid begins to boil.</summary>
    public bool IsNearBoiling(StreamTable table, double temperatureK, double highPa, Nodes next) => BoilingK(table, highPa, next) is { } boiling && temperatureK - boiling < FarK;

    private static double Cubic(double place, bool bends, Func<int, double> value)
    {
        int i = (int)Math.Floor(place);
        double u = place - i, w = 1 - u, a = value(i), b = value(i + 1), rise = b - a;
        double left = bends && i == 0 ? rise : 0.5 * (b - value(i - 1)), right = bends && i == -1 ? rise : 0.5 * (value(i + 2) - a);
        return a + u * u * (3 - 2 * u) * rise + u * w * (w * left - u * right);
    }

    private double? BoilingK(StreamTable table, double highPa, Nodes next)
    {
        if (table.BoilingK(highPa) is not { } k) return (next.Guess ??= _lastBoiling)?.At(highPa);
        if (next.Guess is null && table.BoilingK(highPa * (1 - PressureStep)) is { } less)
            next.Guess = _lastBoiling = new Boiling(k, Math.Log(highPa), (less - k) / Math.Log(1 - PressureStep));
        return k;
    }

    /// <summary>ln of an exact run over the map; what was known where the model has no answer.</summary>
    public double Offset(StreamTable table, IReadOnlyList<double> z, double temperatureK, double molarEnthalpy, double highPa, double backPa, Nodes next, double known)
    {
        double map = LnFlow(table, z, temperatureK, highPa, backPa, next, known);
        return Ask(new ThrottleInlet(highPa, molarEnthalpy, temperatureK, [.. z]), backPa) is { } exact ? exact.LnFlow - map : known;
    }

    // a node next to boiling keeps its distance: when the pressure moves, its temperature moves along
    private Node Make(Func<double, double> temperatureK, StreamTable table, IReadOnlyList<double> z, double highPa, double backPa, double offset)
    {
        double[] fractions = [.. z];
        double Kelvin(double high) => Math.Clamp(temperatureK(high), table.ColdestK, table.WarmestK);
        (double LnFlow, bool Choked)? At(double high, double back) => Ask(new ThrottleInlet(high, table.Enthalpy(Kelvin(high), high), Kelvin(high), fractions), back);
        if (At(highPa, backPa) is { } here && At(highPa * (1 - PressureStep), backPa) is { } less)
        {
            double byHigh = (less.LnFlow - here.LnFlow) / Math.Log(1 - PressureStep), byBack = 0;
            if (!here.Choked && At(highPa, backPa * (1 - PressureStep)) is { } lower) byBack = (lower.LnFlow - here.LnFlow) / Math.Log(1 - PressureStep);
            return new Node(here.LnFlow - offset - byHigh * Math.Log(highPa) - byBack * Math.Log(backPa), byHigh, byBack);
        }
        if (_far.Count > 0) return _far.MinBy(n => Math.Abs(n.Key * StepK - Kelvin(highPa))).Value;
        throw new SolveException(SolveReport.Telling(SolveStatus.NoSolution, 0, double.NaN, $"the throttle has no answer at {SpokenAmount.Temperature(Kelvin(highPa), "0.#")} and {SpokenAmount.Pressure(highPa, "0.##")}"));
    }

    private (double LnFlow, bool Choked)? Ask(ThrottleInlet inlet, double backPa)
    {
        Runs++;
        try
        {
            var (flow, choked) = model(inlet, backPa);
            return (Math.Log(flow), choked);
        }
        catch (SolveException)
        {
            return null;
        }
    }
}
