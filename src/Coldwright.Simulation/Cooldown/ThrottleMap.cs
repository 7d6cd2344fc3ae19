using Coldwright.Machine.Streams;
using Coldwright.Machine.Throttling;
using Coldwright.Numerics;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// The throttle as ln of its flow against how far the temperature before it lies from where its liquid begins to boil, made node by node where the cooldown comes by: at each
/// node the part's own model and its slopes with both pressures; between the nodes a cubic with continuous slope. Boiling liquid chokes the flow, so that it bends sharply
/// there: nodes lie close on both sides, the bend follows the composition, and those next to it belong to one composition. One exact run per composition brings it into line (<see cref="Offset"/>). Not thread-safe.
/// </summary>
/// <param name="model">The part's model: inlet and back pressure (Pa) to mol/s and choked.</param>
internal sealed class ThrottleMap(Func<ThrottleInlet, double, (double MolarFlow, bool Choked)> model)
{
    // nodes lie evenly in asinh of the distance in K near boiling, evenly in K far from it; the place of boiling is a guess while it lies below the tables
    private const double Step = 0.4, FarK = 20, FarStepK = 8, UnknownBoilingK = 120, PressureStep = 4e-3;
    private static readonly double FarPlace = Math.Asinh(FarK) / Step;
    private const int Next = 7;
    private readonly Nodes _nodes = [];

    internal readonly record struct Node(double Value, double ByHigh, double ByBack);

    /// <summary>Nodes by their place.</summary>
    internal sealed class Nodes : SortedDictionary<int, Node>;

    /// <summary>Runs of the part's model.</summary>
    public int Runs { get; private set; }

    /// <summary>ln of the flow in mol/s by the map.</summary>
    /// <param name="table">High side of what circulates.</param>
    /// <param name="z">Its mole fractions.</param>
    /// <param name="temperatureK">Before the throttle, K.</param>
    /// <param name="highPa">Before it, Pa.</param>
    /// <param name="backPa">Behind it, Pa.</param>
    /// <param name="next">Nodes next to boiling, of this composition.</param>
    public double LnFlow(StreamTable table, IReadOnlyList<double> z, double temperatureK, double highPa, double backPa, Nodes next)
    {
        double boiling = table.BoilingK(highPa) ?? UnknownBoilingK, off = Math.Clamp(temperatureK, table.ColdestK, table.WarmestK) - boiling;
        double place = Math.CopySign(Math.Abs(off) <= FarK ? Math.Asinh(Math.Abs(off)) / Step : FarPlace + (Math.Abs(off) - FarK) / FarStepK, off);
        int i = (int)Math.Floor(place);
        double u = place - i, lnHigh = Math.Log(highPa), lnBack = Math.Log(backPa);
        double V(int k)
        {
            var nodes = Math.Abs(k) <= Next ? next : _nodes;
            if (!nodes.TryGetValue(k, out var n)) n = nodes[k] = Make(k, table, z, boiling, highPa, backPa);
            return n.Value + n.ByHigh * lnHigh + n.ByBack * lnBack;
        }

        // no slope is taken across the bend
        double a = V(i), b = V(i + 1), rise = b - a, left = i == 0 ? rise : 0.5 * (b - V(i - 1)), right = i == -1 ? rise : 0.5 * (V(i + 2) - a), w = 1 - u;
        return a + u * u * (3 - 2 * u) * rise + u * w * (w * left - u * right);
    }

    private static double Kelvins(int k)
    {
        double place = Math.Abs(k);
        return Math.CopySign(place <= FarPlace ? Math.Sinh(place * Step) : FarK + (place - FarPlace) * FarStepK, k);
    }

    /// <summary>ln of an exact run over the map; 0 where the model has no answer.</summary>
    public double Offset(StreamTable table, IReadOnlyList<double> z, double temperatureK, double molarEnthalpy, double highPa, double backPa, Nodes next)
    {
        double map = LnFlow(table, z, temperatureK, highPa, backPa, next);
        return Ask(new ThrottleInlet(highPa, molarEnthalpy, temperatureK, [.. z]), backPa) is { } exact ? exact.LnFlow - map : 0;
    }

    private Node Make(int k, StreamTable table, IReadOnlyList<double> z, double boilingK, double highPa, double backPa)
    {
        double t = Math.Clamp(boilingK + Kelvins(k), table.ColdestK, table.WarmestK);
        double[] fractions = [.. z];
        (double LnFlow, bool Choked)? At(double high, double back) => Ask(new ThrottleInlet(high, table.Enthalpy(t, high), t, fractions), back);
        if (At(highPa, backPa) is { } here && At(highPa * (1 - PressureStep), backPa) is { } less)
        {
            double byHigh = (less.LnFlow - here.LnFlow) / Math.Log(1 - PressureStep), byBack = 0;
            if (!here.Choked && At(highPa, backPa * (1 - PressureStep)) is { } lower) byBack = (lower.LnFlow - here.LnFlow) / Math.Log(1 - PressureStep);
            return new Node(here.LnFlow - byHigh * Math.Log(highPa) - byBack * Math.Log(backPa), byHigh, byBack);
        }
        if (_nodes.Count > 0) return _nodes.MinBy(n => Math.Abs(n.Key - k)).Value;
        throw new SolveException(new SolveReport(SolveStatus.NoSolution, 0, double.NaN, FormattableString.Invariant($"the throttle has no answer at {t:0.#} K and {highPa / 1e5:0.##} bar absolute")));
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
