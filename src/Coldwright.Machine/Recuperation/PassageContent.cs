using Coldwright.Machine.HeatTransfer;
using Coldwright.Machine.Streams;

namespace Coldwright.Machine.Recuperation;

/// <summary>What a passage holds: vapour fills its share of the cross-section, liquid the rest, each phase with its own molar mass and composition.</summary>
internal static class PassageContent
{
    /// <summary>mol/m3.</summary>
    /// <param name="p">State.</param>
    /// <param name="meanDensity">Mass per volume, slip included, kg/m3.</param>
    /// <param name="holdUp">Factor on the liquid's share of the cross-section.</param>
    public static double MolarDensity(in StreamPoint p, double meanDensity, double holdUp)
    {
        var (vapour, liquid) = Phases(p, meanDensity, holdUp);
        return vapour + liquid;
    }

    /// <summary>Share of every substance in what is held.</summary>
    /// <param name="table">Properties; constant ones have no substances.</param>
    /// <param name="p">A state of it.</param>
    /// <param name="meanDensity">Mass per volume, slip included, kg/m3.</param>
    /// <param name="holdUp">Factor on the liquid's share of the cross-section.</param>
    /// <param name="shares">Filled; as long as the composition.</param>
    public static void Shares(StreamTable table, in StreamPoint p, double meanDensity, double holdUp, Span<double> shares)
    {
        int n = shares.Length;
        if (n == 0) return;
        var (vapour, liquid) = Phases(p, meanDensity, holdUp);
        if (liquid == 0)
        {
            for (int i = 0; i < n; i++) shares[i] = table.Composition[i];
            return;
        }
        Span<double> x = stackalloc double[n];
        table.Compositions(p.MolarEnthalpy, p.PressurePa, shares, x);
        for (int i = 0; i < n; i++) shares[i] = (vapour * shares[i] + liquid * x[i]) / (vapour + liquid);
    }

    // mol/m3 of both phases; a single one counts as vapour
    private static (double Vapour, double Liquid) Phases(in StreamPoint p, double meanDensity, double holdUp)
    {
        if (!LocalTransfer.TwoPhase(p) || !(p.VapourFraction is > 0 and < 1)) return (p.Density / p.MolarMass, 0);
        double vapour = Math.Clamp((p.Liquid.Density - meanDensity) / (p.Liquid.Density - p.Vapour.Density), 0, 1);
        vapour /= vapour + holdUp * (1 - vapour);
        double light = p.MolarMass * p.Quality / p.VapourFraction, heavy = p.MolarMass * (1 - p.Quality) / (1 - p.VapourFraction);
        return (vapour * p.Vapour.Density / light, (1 - vapour) * p.Liquid.Density / heavy);
    }
}
