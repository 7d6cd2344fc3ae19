using Coldwright.Simulation.Batch;

namespace Coldwright.Report.Batch;

/// <summary>The gram ledger in words, in the order in which the gas meets its losses.</summary>
internal static class GramRows
{
    /// <summary>Name, kg, what it is.</summary>
    public static IReadOnlyList<(string Name, double Kg, string What)> Of(BatchRun run)
    {
        var (g, d) = (run.Grams, run.Details);
        return
        [
            ("in the feed lines", g.LinesKg, "gas that stays between supply and vessel"),
            ("never became liquid", g.VapourLeftKg, "cold vapour that fills the vessel, there for the next batch" + (d.VapourBlownKg > 1e-4 ? ", and some blown out behind the liquid" : "") + (d.LiquidLeftKg > 1e-3 ? ", and liquid that would not run out" : "")),
            ("flashed", g.FlashedKg, "boiled because the pressure was let off"),
            ("boiled in the line", g.LineBoilKg, "to cool the tube to the flask" + (d.SeatLeakKg > 1e-5 ? ", and what the shut valve let past" : "")),
            ("boiled in the flask", g.FlaskBoilKg, "to cool the flask, and by its own leak"),
        ];
    }
}
