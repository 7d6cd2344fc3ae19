namespace Coldwright.Machine.Compression;

/// <summary>
/// A rating sheet turned into what holds for any gas to first order: delivered volume over suction density, and overall
/// isentropic efficiency, each against pressure ratio.
/// </summary>
/// <param name="VolumeFlow">Delivered volume at suction-port density, m3/s, against pressure ratio.</param>
/// <param name="OverallIsentropic">Isentropic over electrical power against pressure ratio.</param>
/// <param name="SuctionPressureRange">Suction pressures of the sheet, Pa absolute.</param>
/// <param name="Points">The sheet's points used: pressure ratio, m3/s, efficiency.</param>
/// <param name="Warnings">Points left out and why.</param>
public sealed record TranslatedMap(EfficiencyCurve VolumeFlow, EfficiencyCurve OverallIsentropic, (double LowPa, double HighPa) SuctionPressureRange,
    IReadOnlyList<(double Ratio, double VolumeFlow, double Isentropic)> Points, IReadOnlyList<string> Warnings)
{
    private const int Grid = 6;

    /// <summary>Translates a sheet on a grid over its window.</summary>
    /// <param name="map">The sheet.</param>
    /// <param name="cancel">Cancels the work.</param>
    /// <exception cref="ArgumentException">The sheet gives no usable points.</exception>
    public static TranslatedMap From(RatingMap map, CancellationToken cancel = default)
    {
        map.Check();
        var cycle = new RatingCycle(map.Refrigerant);
        var points = new List<(double, double, double)>();
        int impossible = 0, tried = 0;
        double lowPa = double.PositiveInfinity, highPa = 0;
        var condensing = Steps(map.Condensing).Select(t => (K: t, Pa: cycle.DewPressure(t))).ToArray();
        foreach (double evaporating in Steps(map.Evaporating))
        {
            double suctionPa = cycle.DewPressure(evaporating);
            foreach (var (condensingK, dischargePa) in condensing)
            {
                cancel.ThrowIfCancellationRequested();
                if (dischargePa < 1.2 * suctionPa) continue;
                tried++;
                var at = IsentropicPoint.Of(cycle.Model, cycle.Composition, map.SuctionK(evaporating), suctionPa, dischargePa);
                double flow = map.MassFlow.At(evaporating, condensingK), power = map.Power.At(evaporating, condensingK);
                double volume = flow / at.MassDensity, efficiency = flow / at.MolarMass * at.MolarWork / power;
                // more than an ideal machine: the corner of a window that the maker did not test, or coefficients in another unit
                if (!(flow > 0 && power > 0 && efficiency is > 0.02 and < 1)) { impossible++; continue; }
                points.Add((dischargePa / suctionPa, volume, efficiency));
                (lowPa, highPa) = (Math.Min(lowPa, suctionPa), Math.Max(highPa, suctionPa));
            }
        }
        if (points.Count < 8) throw new ArgumentException(
            $"the rating sheet of {map.Refrigerant} gives only {points.Count} possible points of {tried} in its window: check units (flow, power, temperature scale) and the order of the coefficients", nameof(map));
        var warnings = new List<string>(cycle.Notes);
        if (impossible > 0) warnings.Add($"{impossible} of {tried} points of the rating sheet were left out: no flow, no power, or more than an ideal machine");
        return new TranslatedMap(EfficiencyCurve.Fit(points.ConvertAll(p => (p.Item1, p.Item2)), 3), EfficiencyCurve.Fit(points.ConvertAll(p => (p.Item1, p.Item3)), 4),
            (lowPa, highPa), points.ConvertAll(p => (p.Item1, p.Item2, p.Item3)), warnings);
    }

    private static IEnumerable<double> Steps((double LowK, double HighK) range) =>
        Enumerable.Range(0, Grid).Select(i => range.LowK + (range.HighK - range.LowK) * i / (Grid - 1));
}
