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

    /// <summary>The phases in words, from constants.</summary>
    public static string Names(ReadOnlySpan<PhaseBuffer> phases) => (KindOf(phases, 0) == PhaseKind.Vapour, phases.Length) switch
    {
        (true, 1) => "vapour",
        (false, 1) => "liquid",
        (true, 2) => "vapour+liquid",
        (false, 2) => "liquid+second_liquid",
        (true, 3) => "vapour+liquid+second_liquid",
        (false, _) => "liquid+second_liquid+second_liquid",
        _ => "vapour+liquid+second_liquid+second_liquid",
    };
}
