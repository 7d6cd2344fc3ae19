using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;

namespace Coldwright.Design.Sizing;

/// <summary>Flask for the liquid of a batch.</summary>
internal static class FlaskSizer
{
    // our assumptions: room for the froth of the first pour; flasks as they are sold
    private const double Froth = 1.5;
    private static readonly double[] _litres = [0.25, 0.5, 1, 2, 3, 5, 10];

    public static SizeResult Size(SizeContext c, FlaskPart part, SizeTarget? target)
    {
        double volume = target?.Value ?? Usual(c);
        if (target is null) c.Said.Add(FormattableString.Invariant($"sized for {Froth} times what a batch can leave in it, so that the froth of the first pour stays inside (our assumption); a target asks for another volume"));
        return new SizeResult
        {
            Part = part.Name,
            Kind = "flask",
            Target = new("volume_m3", "Volume", volume, "m3"),
            Method = "liquid of one batch let down from saturation, and room for froth",
            Options = SizeContext.Sorted(_litres.Select(l => new SizeOption { Stock = FormattableString.Invariant($"{l} L"), Figures = [new("volume_m3", "Volume", 1e-3 * l, "m3"), new("filled", "Filled by what was asked for", volume / (1e-3 * l), "1")], Cut = [new(FormattableString.Invariant($"open vacuum flask, {l} L"), 1, "piece")], Keys = [("volume", FormattableString.Invariant($"{l} L"))], WhyNot = 1e-3 * l < volume ? "too small" : "" }), "volume_m3"),
            Columns = ["volume_m3", "filled"],
            Sources = ["docs/theory/size.md"],
            Warnings = ["an open flask only: a stopper turns it into a bomb"],
        };
    }

    private static double Usual(SizeContext c)
    {
        if (c.Layout.Feed is not { } feed) throw new ArgumentException("nothing is liquefied here; a target says how large the flask is to be", nameof(c));
        var fluid = new ProductFluid(feed.Gas);
        double kg = ReceiverSizer.Batch(c, feed, fluid), pressure = Math.Min(feed.PressurePa, 0.95 * fluid.CriticalPressurePa), flash = fluid.LetDown(fluid.Saturated(pressure, 0).MolarEnthalpy, c.RoomPa).VapourFraction;
        return Froth * kg * (1 - flash) / (fluid.Saturated(c.RoomPa, 0).MolarDensity * fluid.MolarMass);
    }
}
