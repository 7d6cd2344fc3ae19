using Coldwright.Machine.Streams;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// The throttle as ln of its flow against the temperature before it, made node by node where the cooldown comes by: at each node the part's own model and its
/// slopes with both pressures; between the nodes a cubic with continuous slope. One exact run per composition brings it into line (<see cref="Offset"/>).
/// Not thread-safe.
/// </summary>
/// <param name="model">The part's model: inlet and back pressure (Pa) to mol/s and choked.</param>
internal sealed class ThrottleMap(Func<ThrottleInlet, double, (double MolarFlow, bool Choked)> model)
{
    private const double StepLnK = 0.05, PressureStep = 4e-3;
    private readonly SortedDictionary<int, Node> _nodes = [];

    private readonly record struct Node(double Value, double ByHigh, double ByBack);

    /// <summary>Runs of the part's model.</summary>
    public int Runs { get; private set; }

    /// <summary>ln of the flow in mol/s by the map.</summary>
    /// <param name="table">High side of what circulates.</param>
    /// <param name="z">Its mole fractions.</param>
    /// <param name="temperatureK">Before the throttle, K.</param>
    /// <param name="highPa">Before it, Pa.</param>
    /// <param name="backPa">Behind it, Pa.</param>
    public double LnFlow(StreamTable table, double[] z, double temperatureK, double highPa, double backPa)
    {
        double place = Math.Log(Math.Clamp(temperatureK, table.ColdestK, table.WarmestK)) / StepLnK;
        int i = (int)Math.Floor(place);
        double u = place - i, lnHigh = Math.Log(highPa), lnBack = Math.Log(backPa);
        double V(int k)
        {
            if (!_nodes.TryGetValue(k, out var n)) n = Make(k, table, z, highPa, backPa);
            return n.Value + n.ByHigh * lnHigh + n.ByBack * lnBack;
        }

        double a = V(i), b = V(i + 1), before = V(i - 1), after = V(i + 2), left = 0.5 * (b - before), right = 0.5 * (after - a), w = 1 - u;
        return a + u * u * (3 - 2 * u) * (b - a) + u * w * (w * left - u * right);
    }

    /// <summary>ln of an exact run over the map; 0 where the model has no answer.</summary>
    public double Offset(StreamTable table, double[] z, double temperatureK, double molarEnthalpy, double highPa, double backPa)
    {
        double map = LnFlow(table, z, temperatureK, highPa, backPa);
        return Ask(new ThrottleInlet(highPa, molarEnthalpy, temperatureK, z), backPa) is { } exact ? exact.LnFlow - map : 0;
    }

    private Node Make(int k, StreamTable table, double[] z, double highPa, double backPa)
    {
        double wanted = Math.Exp(k * StepLnK), t = Math.Clamp(wanted, table.ColdestK, table.WarmestK);
        (double LnFlow, bool Choked)? At(double high, double back) => Ask(new ThrottleInlet(high, table.Enthalpy(t, high), t, z), back);
        Node node;
        if (At(highPa, backPa) is { } here && At(highPa * (1 - PressureStep), backPa) is { } less)
        {
            double byHigh = (less.LnFlow - here.LnFlow) / Math.Log(1 - PressureStep), byBack = 0;
            if (!here.Choked && At(highPa, backPa * (1 - PressureStep)) is { } lower) byBack = (lower.LnFlow - here.LnFlow) / Math.Log(1 - PressureStep);
            node = new Node(here.LnFlow - byHigh * Math.Log(highPa) - byBack * Math.Log(backPa), byHigh, byBack);
        }
        else if (_nodes.Count > 0) node = _nodes.MinBy(n => Math.Abs(n.Key - k)).Value;
        else throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, double.NaN, FormattableString.Invariant($"the throttle has no answer at {t:0.#} K and {highPa / 1e5:0.##} bar absolute")));
        return _nodes[k] = node;
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
