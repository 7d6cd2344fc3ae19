using System.Diagnostics.CodeAnalysis;
using Coldwright.Machine.Description;

namespace Coldwright.Machine.Layout;

/// <summary>
/// The one family of layouts the solvers handle, as typed parts:
/// compressor, aftercooler, [warm-exchanger.high], [precooler], recuperator.high, throttle, coil, recuperator.low,
/// [warm-exchanger.low], back to the compressor; and, when there is a product, feed, [precooler.feed], vessel, flask.
/// Valves may stand in any line and reliefs may branch off any; a buffer may hang between aftercooler and suction.
/// </summary>
public sealed record LoopLayout
{
    /// <summary>The loop's compressor.</summary>
    public required CompressorPart Compressor { get; init; }
    /// <summary>The aftercooler.</summary>
    public required AftercoolerPart Aftercooler { get; init; }
    /// <summary>The exchanger ahead of the precooler; null when the returning gas goes from the recuperator straight to the suction.</summary>
    public WarmExchangerPart? WarmExchanger { get; init; }
    /// <summary>The precooler; null when there is none.</summary>
    public PrecoolerPart? Precooler { get; init; }
    /// <summary>The recuperator.</summary>
    public required RecuperatorPart Recuperator { get; init; }
    /// <summary>The throttle.</summary>
    public required ThrottlePart Throttle { get; init; }
    /// <summary>The coil at the load.</summary>
    public required CoilPart Coil { get; init; }
    /// <summary>The insulated box; null when none is described.</summary>
    public ColdBoxPart? ColdBox { get; init; }
    /// <summary>The cold vessel; null when a block is cooled.</summary>
    public VesselPart? Vessel { get; init; }
    /// <summary>The cooled block; null when there is a vessel.</summary>
    public BlockPart? Block { get; init; }
    /// <summary>The product gas; null when nothing is liquefied.</summary>
    public FeedPart? Feed { get; init; }
    /// <summary>The flask; null when none is described.</summary>
    public FlaskPart? Flask { get; init; }
    /// <summary>The buffer; null when there is none.</summary>
    public BufferPart? Buffer { get; init; }
    /// <summary>True when the product gas passes the precooler before the vessel.</summary>
    public bool FeedPrecooled { get; init; }
    /// <summary>The loop in the direction of flow, from the compressor back to the compressor, valves included.</summary>
    public required IReadOnlyList<PathStep> LoopPath { get; init; }
    /// <summary>The product's way from the feed on, valves included; empty without a feed.</summary>
    public required IReadOnlyList<PathStep> ProductPath { get; init; }

    /// <summary>Finds the layout of a machine; every refusal is reported.</summary>
    /// <param name="machine">The machine; its lines join known ports.</param>
    /// <param name="layout">The layout, when the method returns true.</param>
    /// <param name="refusals">Why not, when the method returns false.</param>
    public static bool TryFind(MachineDescription machine, [NotNullWhen(true)] out LoopLayout? layout, out IReadOnlyList<LayoutRefusal> refusals)
    {
        var found = new List<LayoutRefusal>();
        layout = LayoutFinder.Find(machine, found);
        refusals = found.Distinct().ToArray();
        if (found.Count > 0) layout = null;
        return layout is not null;
    }
}
