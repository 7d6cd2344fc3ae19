using Coldwright.Fluids.States;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// States on the two sides of a jump at (to rounding) one temperature and pressure, mixed: where a substance boils that is pure, or
/// pure but for traces.
/// </summary>
internal static class StateLever
{
    /// <summary>The mixture of both; <paramref name="share"/> (0 to 1) of it is <paramref name="second"/>.</summary>
    public static FluidState Mix(FluidState first, FluidState second, double share)
    {
        var phases = new List<PhaseState>();
        foreach (var p in second.Phases) phases.Add(p with { Fraction = share * p.Fraction });
        foreach (var p in first.Phases)
        {
            int same = phases.FindIndex(q => q.Kind == p.Kind && Math.Abs(q.MolarDensity - p.MolarDensity) < 1e-4 * p.MolarDensity);
            if (same >= 0) phases[same] = phases[same] with { Fraction = phases[same].Fraction + (1 - share) * p.Fraction };
            else phases.Add(p with { Fraction = (1 - share) * p.Fraction });
        }
        return second with { Phases = phases.Where(p => p.Fraction > 0).OrderBy(p => p.Kind).ToArray() };
    }
}
