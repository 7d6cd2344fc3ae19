using Coldwright.Machine.Description;
using Coldwright.Machine.Feed;
using Coldwright.Machine.Layout;
using Coldwright.Machine.Throttling;
using Coldwright.Quantities;
using Coldwright.Simulation.Batch;

namespace Coldwright.Design.Sizing;

/// <summary>Flow coefficient of the drain valve for the time of a discharge, and the line behind it in which least boils, by the batch's own model.</summary>
internal static class DrainSizer
{
    // our assumptions: a discharge that can be watched; how full, and opened at what share of the feed's pressure
    private const double UsualS = 180, Fill = 0.8, OpenShare = 0.5;
    private const double FirstKv = 0.003;
    private const int Rounds = 8;

    public static SizeResult Size(SizeContext c, ValvePart part, SizeTarget? target)
    {
        var steps = c.Layout.ProductPath.ToList();
        int vessel = steps.FindIndex(s => s.Part is VesselPart);
        if (vessel < 0 || steps.Skip(vessel + 1).All(s => s.Part.Name != part.Name) || c.Layout.Feed is not { } feed)
            throw new ArgumentException($"'{part.Name}' is not the drain valve between vessel and flask; only that one is sized", nameof(part));
        double time = target?.Value ?? UsualS;
        if (target is null) c.Said.Add(FormattableString.Invariant($"sized for a discharge of {UsualS / 60:0} min (our assumption); a target asks for another time"));
        var purity = ProductPurity.Of(feed.Gas, null);
        double open = c.RoomPa + OpenShare * (feed.PressurePa - c.RoomPa), kv = FirstKv;
        var plan = new BatchPlan { FeedPressurePa = feed.PressurePa, FillShare = Fill, OpeningPressurePa = open, LongestDischargeS = 20 * time, StandS = 1 };
        var line = steps.Skip(vessel + 1).Select(s => s.Line).OfType<Line>().Where(l => l is { Tube: not null, Place: Place.Room }).ToArray();
        // the tube of the file first: the valve's opening then starts near for the others
        var own = line.Select(l => l.Tube!).Take(1).ToArray();
        var found = StockLoop.Each(c, own.Concat(SizeContext.Stock(0.125 * 0.0254, 0.375 * 0.0254, "ACR").Where(t => own.All(o => o.Text != t.Text))), t => t.Text, tube =>
        {
            var machine = c.Machine with { Lines = [.. c.Machine.Lines.Select(l => line.Contains(l) ? l with { Tube = tube } : l)] };
            if (!LoopLayout.TryFind(machine, out var layout, out var refusals)) throw new ArgumentException(string.Join("; ", refusals), nameof(tube));
            var cooler = BatchCoolerReader.Read(machine, layout, purity, c.Loop, null, c.Said, c.Cancel);
            var (took, run) = At(kv);
            // the time goes nearly with the inverse of the opening
            for (int i = 0; i < Rounds && Math.Abs(took / time - 1) > 1e-3; i++)
            {
                if (took <= 0) throw new ArgumentException("nothing is discharged with this cooler: 'batch' says why", nameof(tube));
                kv *= took / time;
                (took, run) = At(kv);
            }
            double length = line.Sum(l => l.LengthM);
            return new SizeOption
            {
                Stock = $"valve and line of {tube.Text}",
                Figures = [new("kv_m3_h", "Kv as far as it is opened", kv, "m3/h"), new("bore_m", "A plain bore of the same area", Math.Sqrt(4 / Math.PI * new ControlValve { Kv = kv }.EffectiveAreaM2 / 0.62), "m", null, "discharge coefficient 0.62 (our assumption)"), new("discharge_s", "Discharge takes", took, "s"),
                    new("collected_kg", "In a cold flask", run.Grams.CollectedKg, "kg"), new("line_boil_kg", "Boiled in the line", run.Grams.LineBoilKg, "kg"), new("line_m", "Line outside the box", length, "m")],
                Cut = [new(tube.Text, length, "m", c.PerMetre(tube.OutsideDiameterM, tube.WallM))],
                Keys = [("kv", FormattableString.Invariant($"{kv:0.#####}"))],
            };
            (double Took, BatchRun Run) At(double value)
            {
                c.Observer?.Invoke(FormattableString.Invariant($"discharging through {tube.Text} with Kv {value:0.#####}"));
                var r = new BatchRunner(cooler with { DrainAreaM2 = new ControlValve { Kv = value }.EffectiveAreaM2 }, plan, new BatchOptions { RelativeTolerance = 1e-5, FlaskCold = true }, keepSeries: false, c.Cancel).Run();
                return (r.Schedule.Where(s => s.Action == "discharge").Sum(s => s.EndS - s.StartS), r);
            }
        });
        return new SizeResult
        {
            Part = part.Name,
            Kind = "valve",
            Target = new("discharge_s", "Time of a discharge", time, "s"),
            TargetRemark = Spoken.Of($"{100 * Fill:0} % of brimful, opened at {SpokenAmount.Pressure(open, "0.##")}"),
            Method = "the batch's own discharge, the valve's opening varied, for each line",
            // what boils in the line is the price of a wide one
            Options = [.. found.OrderBy(o => !o.Fits).ThenBy(o => o.Fits ? o.Figure("line_boil_kg") : 0)],
            Columns = ["kv_m3_h", "bore_m", "discharge_s", "collected_kg", "line_boil_kg"],
            Sources = ["docs/theory/batch.md", "docs/theory/throttle.md"],
            Warnings = [],
        };
    }
}
