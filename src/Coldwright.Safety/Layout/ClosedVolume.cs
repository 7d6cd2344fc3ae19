using Coldwright.Machine.Description;

namespace Coldwright.Safety.Layout;

/// <summary>What stays joined when every valve is shut and the feed is closed.</summary>
/// <param name="Parts">Parts in it.</param>
/// <param name="Lines">Lines in it.</param>
/// <param name="Zone">Zone of its content.</param>
/// <param name="HoldsLiquid">True when cold liquid can get in.</param>
internal sealed record ClosedVolume(IReadOnlyList<Part> Parts, IReadOnlyList<Line> Lines, Zone Zone, bool HoldsLiquid)
{
    /// <summary>The part it is known by: the vessel if there is one, else another part, else its first line.</summary>
    public string Name => Parts.OfType<VesselPart>().FirstOrDefault()?.Name
        ?? Parts.FirstOrDefault(p => p is not ReliefPart)?.Name
        ?? (Lines.Count > 0 ? $"{Lines[0].From} to {Lines[0].To}" : Parts[0].Name);

    /// <summary>The relief devices on it.</summary>
    public IEnumerable<ReliefPart> Reliefs => Parts.OfType<ReliefPart>();

    /// <summary>True when it opens to the room through a flask, or includes the compressor and with it the gas space of the whole loop.</summary>
    public bool HasRoom => Parts.Any(p => p is FlaskPart or CompressorPart);
}
