using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;

namespace Coldwright.Simulation.Batch;

/// <summary>What a batch shows that a person must see: heat and oil of the feed compressor, a full vessel that warms, air drawn in, a flask too small.</summary>
internal static class BatchConcerns
{
    // Our assumption: a splasher needs some 15 turns a second to throw oil; half the oil may go before a machine is starved.
    private const double SplashRevPerS = 15, OilToSpare = 0.5, SecondsPerHour = 3600;
    // Our assumption: hermetic machines throw out so much oil with the gas, by mass, when nothing is known of them.
    private const double RotaryOil = 0.01, ReciprocatingOil = 0.005;

    public static IEnumerable<BatchConcern> Of(MachineDescription machine, LoopLayout layout, BatchCooler cooler, BatchRun run, FeedDuty? duty)
    {
        if (layout.Feed!.Compressor is { } compressor) foreach (var c in Oil(layout.Feed, compressor, duty)) yield return c;
        if (duty is { DutyShare: < 1 })
            yield return new("feed-compressor-hot", layout.Feed.Name, duty.SteadyShellK, duty.AllowedShellK, "K",
                FormattableString.Invariant($"run on, the feed compressor's shell would come to this temperature; it may run {duty.RunS / 60:0} min and must then rest {duty.RestS / 60:0} min, {100 * duty.DutyShare:0} % of the time"));
        if (WarmPressure(cooler, run) is { } warm)
        {
            double? relief = machine.PartsOf<ReliefPart>().Where(r => Guards(machine, layout, r)).Select(r => (double?)r.SetPressurePa).Min();
            yield return new("shut-vessel-warms", layout.Vessel!.Name, warm, relief, "Pa",
                FormattableString.Invariant($"{1e3 * Fullest(run):0} g shut into the vessel come to this pressure when they warm to the room"));
        }
        double lowest = run.Series.Count > 0 ? run.Series.Min(m => m.PressurePa) : cooler.RoomPa;
        if (lowest < cooler.RoomPa - 1000)
            yield return new("vessel-below-room", layout.Vessel!.Name, lowest, cooler.RoomPa, "Pa", "the cold vessel sucks: with the drain open, air and moisture are drawn in and freeze there");
        if (layout.Flask is { } flask && run.Grams.CollectedKg / cooler.AtRoom.Density > flask.VolumeM3)
            yield return new("flask-overflows", flask.Name, run.Grams.CollectedKg / cooler.AtRoom.Density, flask.VolumeM3, "m3", "more liquid comes than the flask holds");
    }

    private static double Fullest(BatchRun run) => run.Series.Count > 0 ? run.Series.Max(m => m.VesselKg) : 0;

    private static double? WarmPressure(BatchCooler cooler, BatchRun run)
    {
        double kg = Fullest(run);
        return kg > 0 ? cooler.Product.Fork().Phase.AtDensity(cooler.RoomK, kg / cooler.VesselM3).PressurePa : null;
    }

    // reliefs joined to the vessel by a line
    private static bool Guards(MachineDescription machine, LoopLayout layout, ReliefPart relief) =>
        machine.Lines.Any(l => l.To == relief.Name && (l.From == layout.Vessel!.Name || layout.ProductPath.Any(s => s.Port == l.From)));

    private static IEnumerable<BatchConcern> Oil(FeedPart feed, FeedCompressorDescription c, FeedDuty? duty)
    {
        if (c.Lubrication == FeedLubrication.DrySump)
            yield return new("oil-starvation", feed.Name, null, null, "", "a machine without a sump lived on the oil that its refrigerant brought back; product gas brings none, and its bearings run dry");
        double? lowest = c.LowestSpeedRevPerS ?? (c.Lubrication == FeedLubrication.Splash ? SplashRevPerS : null);
        if (c.SpeedRevPerS < lowest)
            yield return new("oil-starvation", feed.Name, c.SpeedRevPerS, lowest, "rev/s", "it turns too slowly for its oil pump or splasher: flow and heat fall with the speed, but the bearings get no oil at all");
        if (c.OilChargeKg is { } oil && duty is { FlowKgPerS: > 0 })
        {
            double share = c.Type == CompressorType.Rotary ? RotaryOil : ReciprocatingOil, hours = OilToSpare * oil / (share * duty.FlowKgPerS) / SecondsPerHour;
            yield return new("oil-carried-off", feed.Name, hours, null, "h",
                FormattableString.Invariant($"oil leaves with the gas and does not come back: at {100 * share:0.#} % of the flow half of it is gone after {hours:0} h of running, less what a separator returns; what passes freezes in the vessel"));
        }
    }
}
