using Coldwright.Fluids.States;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// Vapour or liquid: a convention, since nothing distinguishes them above the critical point. A single phase is vapour
/// when it is less dense than sum x_i v_c,i allows at the critical volumes. Of several phases the lightest is vapour
/// when it lies below that density or is less than half as dense as the next.
/// </summary>
internal static class PhaseNaming
{
    /// <summary>Kind of phase <paramref name="j"/> of phases sorted lightest first.</summary>
    public static PhaseKind KindOf(ReadOnlySpan<PhaseBuffer> phases, int j)
    {
        bool firstIsVapour = phases[0].Density < phases[0].DividingDensity
            || phases.Length > 1 && phases[0].Density < 0.5 * phases[1].Density;
        if (j == 0) return firstIsVapour ? PhaseKind.Vapour : PhaseKind.Liquid;
        return j == 1 && firstIsVapour ? PhaseKind.Liquid : PhaseKind.SecondLiquid;
    }
}
