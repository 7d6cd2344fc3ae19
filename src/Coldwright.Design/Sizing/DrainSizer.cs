using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Throttling;
using Coldwright.Simulation.Batch;

namespace Coldwright.Design.Sizing;

/// <summary>Flow coefficient of the drain valve for the time of a discharge, by the batch's own model.</summary>
internal static class DrainSizer
{
    // our assumptions: a discharge that can be watched; how full, and opened at what share of the feed's pressure
    private const double UsualS = 180, Fill = 0.8, OpenShare = 0.5;
    private const int Rounds = 8;
    private static readonly double[] _shares = [1, 1.0 / 3, 3];

    public static SizeResult Size(SizeContext c, ValvePart part, SizeTarget? target)
    {
        var steps = c.Layout.ProductPath.ToList();
        int vessel = steps.FindIndex(s => s.Part is VesselPart);
        if (vessel < 0 || steps.Skip(vessel + 1).All(s => s.Part.Name != part.Name) || c.Layout.Feed is not { } feed)
            throw new ArgumentException($"'{part.Name}' is not the drain valve between vessel and flask; only that one is sized", nameof(part));
        double time = target?.Value ?? UsualS;
        if (target is null) c.Said.Add(FormattableString.Invariant($"sized for a discharge of {UsualS / 60:0} min (our assumption); --target asks for another time"));
        c.Observer?.Invoke("tabulating the product");
        var purity = ProductPurity.Of(feed.Gas, null);
        var cooler = BatchCoolerReader.Read(c.Machine, c.Layout, purity, c.Loop, null, c.Said, c.Cancel);
        double open = c.RoomPa + OpenShare * (feed.PressurePa - c.RoomPa);
        var plan = new BatchPlan { FeedPressurePa = feed.PressurePa, FillShare = Fill, OpeningPressurePa = open, LongestDischargeS = 20 * time, StandS = 1 };
        (double Took, BatchRun Run) At(double kv)
        {
            var run = new BatchRunner(cooler with { DrainAreaM2 = new ControlValve { Kv = kv }.EffectiveAreaM2 }, plan, new BatchOptions { RelativeTolerance = 1e-5, FlaskCold = true }, keepSeries: false, c.Cancel).Run();
            return (run.Schedule.Where(s => s.Action == "discharge").Sum(s => s.EndS - s.StartS), run);
        }
        double found = 0.003;
        // the time goes nearly with the inverse of the opening
        for (int i = 0; i < Rounds; i++)
        {
            c.Observer?.Invoke(FormattableString.Invariant($"discharging with Kv {found:0.#####}"));
            double took = At(found).Took;
            if (took <= 0) throw new ArgumentException("nothing is discharged with this cooler: 'batch' says why", nameof(part));
            if (Math.Abs(took / time - 1) < 1e-3) break;
            found *= took / time;
        }
        var options = StockLoop.Each(c, _shares, s => FormattableString.Invariant($"Kv {found * s:0.#####}"), s =>
        {
            double kv = found * s;
            var (took, run) = At(kv);
            return new SizeOption
            {
                Stock = FormattableString.Invariant($"Kv {kv:0.#####}"),
                Figures = [new("kv_m3_h", "Kv as far as it is opened", kv, "m3/h"), new("bore_m", "A plain bore of the same area", Math.Sqrt(4 / Math.PI * new ControlValve { Kv = kv }.EffectiveAreaM2 / 0.62), "m", null, "discharge coefficient 0.62 (our assumption)"), new("discharge_s", "Discharge takes", took, "s"),
                    new("collected_kg", "In a cold flask", run.Grams.CollectedKg, "kg"), new("line_boil_kg", "Boiled in the line", run.Grams.LineBoilKg, "kg")],
                Cut = [],
                Keys = [("kv", FormattableString.Invariant($"{kv:0.#####}"))],
                WhyNot = s == 1 ? "" : s < 1 ? "slower than asked for, shown for comparison" : "faster than asked for, shown for comparison",
            };
        });
        return new SizeResult
        {
            Part = part.Name,
            Kind = "valve",
            Target = new("discharge_s", "Time of a discharge", time, "s", null, FormattableString.Invariant($"{100 * Fill:0} % of brimful, opened at {open / 1e5:0.##} bar absolute")),
            Method = "the batch's own discharge, the valve's opening varied",
            Options = SizeContext.Sorted(options, "kv_m3_h"),
            Columns = ["kv_m3_h", "bore_m", "discharge_s", "collected_kg", "line_boil_kg"],
            Sources = ["docs/theory/batch.md", "docs/theory/throttle.md"],
            Warnings = [],
        };
    }
}
