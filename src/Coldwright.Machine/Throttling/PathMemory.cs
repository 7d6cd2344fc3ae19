namespace Coldwright.Machine.Throttling;

/// <summary>
/// Expansions at rest whose phases were certified. One that begins close by takes its phases from there: a solver asks for the same tube again and again,
/// little moved. Only certified ones are kept, so that phases are never handed on from hand to hand. Not thread-safe.
/// </summary>
internal sealed class PathMemory
{
    // how far off an inlet may lie: ln of the pressure, K, ln of each mole fraction
    private const double LnPressure = 0.06, Kelvin = 2, LnFraction = 0.04, BelowEnd = 0.9;
    private const int Most = 8;

    private readonly List<(ThrottleInlet Inlet, List<PathNode> Nodes)> _kept = [];

    /// <summary>The nearest path that reaches down to a pressure (Pa); null: none is close.</summary>
    public List<PathNode>? Near(ThrottleInlet inlet, double endPa)
    {
        List<PathNode>? best = null;
        double least = 1;
        foreach (var (there, nodes) in _kept)
            if (nodes[^1].PressurePa * BelowEnd <= endPa && Distance(inlet, there) is var d && d < least) (best, least) = (nodes, d);
        return best;
    }

    /// <summary>Keeps a certified path; the oldest goes.</summary>
    public void Keep(ThrottleInlet inlet, List<PathNode> nodes)
    {
        if (_kept.Count == Most) _kept.RemoveAt(0);
        _kept.Add((inlet, nodes));
    }

    private static double Distance(ThrottleInlet a, ThrottleInlet b)
    {
        double d = Math.Max(Math.Abs(Math.Log(a.PressurePa / b.PressurePa)) / LnPressure, Math.Abs(a.TemperatureK - b.TemperatureK) / Kelvin);
        for (int i = 0; i < a.Composition.Count; i++)
            d = Math.Max(d, a.Composition[i] == b.Composition[i] ? 0 : Math.Abs(Math.Log(a.Composition[i] / b.Composition[i])) / LnFraction);
        return d;
    }
}
