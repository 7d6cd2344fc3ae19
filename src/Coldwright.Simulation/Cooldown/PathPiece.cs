using Coldwright.Numerics.Integration;

namespace Coldwright.Simulation.Cooldown;

/// <summary>A stretch of a run with one set of tables and maps, and where it was looked at.</summary>
/// <param name="FromS">s.</param>
/// <param name="Map">Tables and maps.</param>
internal sealed record PathPiece(double FromS, LoopMap Map)
{
    /// <summary>How they were taken over from those before; null: nothing was.</summary>
    public LoopHandover? Handover { get; set; }
    /// <summary>End, s.</summary>
    public double ToS { get; set; }
    /// <summary>Moments, rising, from start to end, s, with the state at each.</summary>
    public List<(double TimeS, double[] State)> Looks { get; } = [];
    /// <summary>What flashes make of it; null: not yet known.</summary>
    public DirectCorrection? Correction { get; set; }

    /// <summary>Brings the looks within a step up to date.</summary>
    public void Look(AcceptedStep step)
    {
        for (int i = 0; i < Looks.Count; i++)
        {
            var (time, state) = Looks[i];
            if (time > step.Start && time <= step.End) step.Evaluate(time, state);
        }
    }

    /// <summary>Leaves of the looks both ends and so many between them, evenly in the steps the run took.</summary>
    public void Thin(int between)
    {
        int last = Looks.Count - 1;
        var kept = Enumerable.Range(0, between + 2).Select(i => (int)Math.Round((double)i * last / (between + 1))).Distinct().Select(i => Looks[i]).ToArray();
        Looks.Clear();
        Looks.AddRange(kept);
    }
}
