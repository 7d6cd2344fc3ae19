namespace Coldwright.Machine.Throttling;

/// <summary>Turns a finished march into a result.</summary>
internal static class CapillaryReport
{
    private const double EnergyScale = 1000;

    public static CapillaryResult Of(CapillaryTube tube, ThrottleInlet inlet, ExpansionGrid grid, CapillaryMarch march, double flux, double length,
        double back, double underpressure, PathNode exit, List<string> warnings, double molarMass)
    {
        int last = march.Last, f = grid.FlashIndex;
        double mass = flux * tube.AreaM2, w = flux * exit.Volume, marched = flux * march.VolumeAt(last);
        bool metastable = grid.Late(last);
        double? flashPressure = f < 0 || grid.Pressure[f] < march.ExitPressurePa ? null : grid.Pressure[f];
        return new CapillaryResult
        {
            MassFlowKgPerS = mass,
            MolarFlow = mass / molarMass,
            MassFlux = flux,
            LengthM = length,
            Choked = march.Choked,
            ExitPressurePa = march.ExitPressurePa,
            BackPressurePa = back,
            EntrancePressurePa = march.EntrancePressurePa,
            FlashPressurePa = flashPressure,
            FlashPositionM = flashPressure is null ? null : f < march.First ? 0 : march.LengthAt(f),
            UnderpressurePa = f < 0 ? 0 : underpressure,
            RelativeUncertainty = CapillaryModel.MarchCorrelation.RelativeUncertainty,
            EnergyError = metastable ? 0 : Math.Abs(w * w - marched * marched) / 2 / (marched * marched / 2 + EnergyScale),
            Profile = Points(tube, grid, march, flux),
            Warnings = warnings,
        };
    }

    private static List<CapillaryPoint> Points(CapillaryTube tube, ExpansionGrid grid, CapillaryMarch march, double flux)
    {
        var points = new List<CapillaryPoint>(march.Last - march.First + 2);
        for (int i = march.First - 1; i <= march.Last; i++)
        {
            if (points.Count > 0 && !(march.LengthAt(i) > points[^1].PositionM)) continue;
            double v = march.VolumeAt(i), square = flux * flux, f = march.FrictionAt(i);
            int j = Math.Max(i, march.First), k = j - 1;
            double drop = march.PressureAt(k) - march.PressureAt(j), dv = march.VolumeAt(j) - march.VolumeAt(k);
            double gradient = f * square * v / (2 * tube.BoreM) * drop / Math.Max(drop - square * dv, 1e-12 * drop);
            points.Add(new CapillaryPoint(march.LengthAt(i), march.PressureAt(i), grid.Temperature[i], grid.Quality[i], v, flux * v, f, gradient, grid.Phases[i]));
        }
        return points;
    }
}
