using Coldwright.Numerics.Integration;

namespace Coldwright.Simulation.Batch;

/// <summary>Places in the state of a batch: the first ones steer it, the others are integrals.</summary>
internal static class BatchSlots
{
    public const int VesselKg = 0, VesselJ = 1, SupplyLineKg = 2, FillLineKg = 3, ReceiverKg = 4, ShellJ = 5, LineJ = 6, FlaskWallJ = 7, FlaskKg = 8;
    public const int Steering = 9;
    public const int Fed = 9, Flashed = 10, LineBoil = 11, FlaskBoil = 12, Blown = 13, Drained = 14, SeatLeak = 15;
    public const int CoilJ = 16, FeedEnthalpyJ = 17, BlownJ = 18, RoomToLineJ = 19, RoomToFlaskJ = 20, FeedWorkJ = 21, LineWallJ = 22;
    public const int Count = 23;

    /// <summary>Nothing depends on an integral: only the steering columns are filled.</summary>
    public static JacobianPattern Pattern { get; } = JacobianPattern.FromEntries(Count, from row in Enumerable.Range(0, Count) from column in Enumerable.Range(0, Steering) select (row, column));

    /// <summary>Absolute tolerance over the relative one: kg and J that matter.</summary>
    public static double Size(int slot) => slot switch
    {
        VesselKg or ReceiverKg => 1e-2,
        FlaskKg or SupplyLineKg or FillLineKg => 1e-3,
        VesselJ => 1000,
        ShellJ => 1000,
        LineJ or FlaskWallJ => 100,
        < 16 => 1e-2,
        _ => 1000,
    };
}
