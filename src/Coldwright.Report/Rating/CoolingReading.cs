using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>Reads a cooling curve between its points.</summary>
internal static class CoolingReading
{
    /// <summary>Gross cooling and leak, W, at a load temperature, K, on the straight line between the neighbouring points; null outside the curve.</summary>
    public static (double GrossW, double LeakW)? At(IReadOnlyList<CoolingPoint> curve, double temperatureK)
    {
        for (var i = 0; i + 1 < curve.Count; i++)
        {
            var (a, b) = (curve[i], curve[i + 1]);
            if (temperatureK < a.TemperatureK || temperatureK > b.TemperatureK || b.TemperatureK <= a.TemperatureK) continue;
            var share = (temperatureK - a.TemperatureK) / (b.TemperatureK - a.TemperatureK);
            return (a.GrossCoolingW + share * (b.GrossCoolingW - a.GrossCoolingW), a.HeatLeakW + share * (b.HeatLeakW - a.HeatLeakW));
        }
        return curve.Count == 1 && curve[0].TemperatureK == temperatureK ? (curve[0].GrossCoolingW, curve[0].HeatLeakW) : null;
    }

    /// <summary>Heat that cooling and condensing the feed gives to the cold end, W; null without product.</summary>
    public static double? FeedLoadW(ModelRating rating) => rating.Liquid is { RateKgPerS: > 0 } liquid ? liquid.HeatPerKgJ * liquid.RateKgPerS : null;
}
