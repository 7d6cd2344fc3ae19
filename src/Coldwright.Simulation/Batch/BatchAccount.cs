using static Coldwright.Simulation.Batch.BatchSlots;

namespace Coldwright.Simulation.Batch;

/// <summary>Both ledgers from the first and the last state of a run.</summary>
internal static class BatchAccount
{
    public static GramLedger Grams(double[] start, double[] end)
    {
        double Gain(int slot) => end[slot] - start[slot];
        return new(end[Fed], Gain(SupplyLineKg) + Gain(FillLineKg), Gain(VesselKg) + end[Blown], end[Flashed], end[LineBoil], end[FlaskBoil], Gain(FlaskKg));
    }

    public static JouleLedger Joules(BatchEquations e, double[] start, double[] end)
    {
        double Gain(int slot) => end[slot] - start[slot];
        double zero = e.ZeroH, vapour = e.VapourH - zero;
        (string Name, double Joules)[] entries =
        [
            ("feed", end[FeedEnthalpyJ]),
            ("room_to_line", end[RoomToLineJ]),
            ("room_to_flask", end[RoomToFlaskJ]),
            ("cold_end", -end[CoilJ]),
            ("vessel", -(Gain(VesselJ) - Gain(VesselKg) * zero)),
            ("line_metal", -Gain(LineJ)),
            ("flask_wall", Gain(FlaskWallJ)),
            ("flashed", -end[Flashed] * vapour),
            ("line_boil", -end[LineBoil] * vapour),
            ("flask_boil", -end[FlaskBoil] * vapour),
            ("vapour_blown", -end[BlownJ]),
            ("collected", -Gain(FlaskKg) * (e.LiquidH - zero)),
        ];
        double largest = Math.Max(1, entries.Max(x => Math.Abs(x.Joules)));
        return new(entries, entries.Sum(x => x.Joules) / largest);
    }
}
