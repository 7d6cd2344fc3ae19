using Coldwright.Simulation.Cooldown;

namespace Coldwright.Runs.Explain;

/// <summary>The heat of a pull-down: what the gas carried off in all, and whether it came out of metal, out of the insulation or in through the walls.</summary>
internal static class HeatLedger
{
    /// <summary>Terms in J, the whole first; the others add up to it as well as the course's own balance closes.</summary>
    /// <param name="c">The course.</param>
    /// <param name="endS">End of the pull-down, s.</param>
    public static IReadOnlyList<(string Id, string Name, double Joules)> Of(Course c, double endS) =>
    [
        ("carried-off", "carried off by the gas", Sum(c, endS, i => c.CoolingW[i])),
        ("recuperator", "out of the recuperator's metal", Sum(c, endS, i => c.StoredW[i].RecuperatorW)),
        ("load", "out of the load", Sum(c, endS, i => c.StoredW[i].LoadW)),
        ("insulation", "out of the insulation", Sum(c, endS, i => c.StoredW[i].InsulationW)),
        ("leak", "leaked in from the room", Sum(c, endS, i => c.LeakW[i])),
    ];

    // trapezium rule over the course's own moments
    private static double Sum(Course c, double endS, Func<int, double> watts)
    {
        double sum = 0;
        for (int i = 1; i < c.TimeS.Count && c.TimeS[i - 1] < endS; i++)
        {
            double share = Math.Min(1, (endS - c.TimeS[i - 1]) / (c.TimeS[i] - c.TimeS[i - 1])), from = watts(i - 1), to = from + share * (watts(i) - from);
            sum += 0.5 * (from + to) * share * (c.TimeS[i] - c.TimeS[i - 1]);
        }
        return sum;
    }
}
