using Coldwright.Report.Terminal;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>The cooling curve as a few bars of blocks: what leaks in (light), what is left (solid).</summary>
internal static class CoolingBars
{
    private const int Width = 34;
    private const int Rows = 7, ClosedRows = 5;

    /// <summary>Lines, warm first; empty when there is no curve.</summary>
    public static IEnumerable<string> Lines(ModelRating rating, Readout readout, TerminalStyle style)
    {
        var points = Chosen(rating);
        var most = points.Select(p => Math.Max(p.Gross, p.Leak)).DefaultIfEmpty(0).Max();
        if (most <= 0) yield break;
        yield return style.Quiet($"  {"load at",10}  {"░ leaks in  █ left  · missing",-Width}  {"net",8} = {"gross",8} - {"leak",8}");
        foreach (var (temperatureK, gross, leak) in points)
        {
            var leakCells = Cells(Math.Min(leak, gross), most);
            var netCells = Math.Max(Cells(gross, most) - leakCells, 0);
            var missing = Math.Max(Cells(leak, most) - Cells(gross, most), 0);
            // What is missing can be a whole bar; the three pieces never exceed the width because each is a share of the largest value.
            var bar = style.Warm(new string('░', leakCells)) + style.Cold(new string('█', netCells)) + style.Alarm(new string('·', missing));
            var blank = new string(' ', Math.Max(Width - leakCells - netCells - missing, 0));
            var here = temperatureK == rating.OperatingTemperatureK ? "  <" : "";
            yield return $"  {readout.Temperature(temperatureK),10}  {bar}{blank}  {readout.Watts(gross - leak),8}   {readout.Watts(gross),8}   {readout.Watts(leak),8}{here}";
        }
    }

    // The operating point itself and evenly chosen points of the curve, warm first.
    private static List<(double TemperatureK, double Gross, double Leak)> Chosen(ModelRating rating)
    {
        var curve = rating.CoolingCurve;
        var chosen = new SortedDictionary<double, (double, double)>();
        if (CoolingReading.At(curve, rating.OperatingTemperatureK) is { } at) chosen[rating.OperatingTemperatureK] = at;
        var wanted = Math.Min((rating.Closed is null ? Rows : ClosedRows) - chosen.Count, curve.Count);
        for (var i = 0; i < wanted; i++)
        {
            var p = curve[wanted == 1 ? 0 : (int)Math.Round(i * (curve.Count - 1.0) / (wanted - 1))];
            chosen[p.TemperatureK] = (p.GrossCoolingW, p.HeatLeakW);
        }
        return [.. chosen.Reverse().Select(p => (p.Key, p.Value.Item1, p.Value.Item2))];
    }

    private static int Cells(double watts, double most) => (int)Math.Round(Width * Math.Clamp(watts / most, 0, 1));
}
