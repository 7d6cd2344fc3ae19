namespace Coldwright.Machine.Throttling;

/// <summary>What a person must be told about a march.</summary>
internal static class CapillaryWarnings
{
    private const double FineBoreM = 0.3e-3;

    public static IEnumerable<string> For(CapillaryTube tube, ThrottleInlet inlet, ExpansionGrid grid, CapillaryMarch march, double flux, string? ended)
    {
        if (ended is not null && !march.Choked) yield return $"the fluid's properties end within the expansion: {ended}";
        if (inlet.Composition.Count(x => x > 0) > 1 && grid.Quality[march.Last] > 0)
            yield return "no measured capillary flow of a wide-boiling mixture was found: the band of single refrigerants is applied, calibrate on your own tube";
        if (tube.BoreM < FineBoreM)
            yield return FormattableString.Invariant($"bore {tube.BoreM * 1e3:0.###} mm lies below the 0.6 mm of the published data; a deposit of oil, ice or solid decides the flow there");
        if (march.EntrancePressurePa < grid.Pressure[0] && grid.FlashIndex >= 0 && grid.Pressure[grid.FlashIndex] > march.EntrancePressurePa)
            yield return "the liquid flashes in the entrance: a little subcooling would steady the flow";
        double reynolds = flux * tube.BoreM / grid.Viscosity[march.First];
        double transition = Flow.Friction.CoiledTransitionReynolds(tube.Curvature);
        if (reynolds > 0.9 * transition && reynolds < 1.8 * transition)
            yield return FormattableString.Invariant($"Reynolds number {reynolds:0} lies in the transition from laminar to turbulent: friction is uncertain there");
    }
}
