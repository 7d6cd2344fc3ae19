using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using Coldwright.Simulation.ClosedLoop;

namespace Coldwright.Simulation.Cooldown;

/// <summary>What the passages do to what circulates, tabulated as it is asked for; each null where every correlation is to be asked at every place.</summary>
internal sealed record PlantPassages(PassageTable? High, PassageTable? Low, PassageTable? Coil)
{
    /// <summary>Every correlation at every place.</summary>
    public static PlantPassages None { get; } = new(null, null, null);

    /// <summary>Those of a machine at one composition.</summary>
    public static PlantPassages Of(Hardware h, LoopTables t) => new(
        new PassageTable(t.High, h.Recuperator.Hot, true, h.Knobs.LiquidHoldUp), new PassageTable(t.Low, h.Recuperator.Cold, false, h.Knobs.LiquidHoldUp),
        h.Coil is { } coil ? new PassageTable(t.Low, coil.Channel, false, h.Knobs.LiquidHoldUp) : null);

    /// <summary>Those of a machine about a composition.</summary>
    public static PlantPassages Of(Hardware h, StreamMover high, StreamMover low) => new(
        new PassageTable(high, h.Recuperator.Hot, true, h.Knobs.LiquidHoldUp), new PassageTable(low, h.Recuperator.Cold, false, h.Knobs.LiquidHoldUp),
        h.Coil is { } coil ? new PassageTable(low, coil.Channel, false, h.Knobs.LiquidHoldUp) : null);

    /// <summary>Follows the composition to a distance from the middle.</summary>
    public void MoveTo(ReadOnlySpan<double> step)
    {
        High?.MoveTo(step);
        Low?.MoveTo(step);
        Coil?.MoveTo(step);
    }
}
