using Coldwright.Fluids.States;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// Vapour or liquid: a convention, since nothing distinguishes them above the critical point. The reduced density of a
/// phase is its density times sum x_i v_c,i of the critical volumes. A single phase is vapour below 1. Of several phases
/// the one of lowest reduced density is vapour below 1, or below 1.5 if it is less than 0.6 of every other. The vapour
/// comes first, the liquids after it with rising molar density.
/// </summary>
internal static class PhaseNaming
{
    private const double DenseVapour = 1.5, Contrast = 0.6;

    /// <summary>Puts the phases into the order in which they are named.</summary>
    public static void Sort(Span<PhaseBuffer> phases)
    {
        for (int a = 1; a < phases.Length; a++)
            for (int b = a; b > 0 && phases[b].Density < phases[b - 1].Density; b--)
                (phases[b], phases[b - 1]) = (phases[b - 1], phases[b]);
        int lightest = 0;
        for (int j = 1; j < phases.Length; j++) if (Reduced(phases[j]) < Reduced(phases[lightest])) lightest = j;
        if (!IsVapour(phases, lightest)) return;
        for (int j = lightest; j > 0; j--) (phases[j], phases[j - 1]) = (phases[j - 1], phases[j]);
    }

    /// <summary>Kind of phase <paramref name="j"/> of sorted phases.</summary>
    public static PhaseKind KindOf(ReadOnlySpan<PhaseBuffer> phases, int j)
    {
        bool firstIsVapour = IsVapour(phases, 0);
        if (j == 0) return firstIsVapour ? PhaseKind.Vapour : PhaseKind.Liquid;
        return j == 1 && firstIsVapour ? PhaseKind.Liquid : PhaseKind.SecondLiquid;
    }

    private static double Reduced(PhaseBuffer phase) => phase.Density / phase.DividingDensity;

    private static bool IsVapour(ReadOnlySpan<PhaseBuffer> phases, int which)
    {
        double reduced = Reduced(phases[which]);
        if (reduced < 1) return true;
        if (phases.Length == 1 || reduced > DenseVapour) return false;
        for (int j = 0; j < phases.Length; j++) if (j != which && reduced > Contrast * Reduced(phases[j])) return false;
        return true;
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
