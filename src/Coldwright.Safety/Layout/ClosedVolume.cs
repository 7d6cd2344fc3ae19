using Coldwright.Machine.Description;

namespace Coldwright.Safety.Layout;

/// <summary>What stays joined when every valve is shut and the feed is closed.</summary>
/// <param name="Parts">Parts in it.</param>
/// <param name="Borders">Valves, and the compressor, that close it and hold its pressure; not the supply.</param>
/// <param name="Lines">Lines in it.</param>
/// <param name="Zone">Zone of its content.</param>
/// <param name="HoldsLiquid">True when cold liquid can get in.</param>
/// <param name="TakesDischarge">True when the compressor pumps into it.</param>
/// <param name="GivesSuction">True when the compressor draws from it.</param>
internal sealed record ClosedVolume(IReadOnlyList<Part> Parts, IReadOnlyList<Part> Borders, IReadOnlyList<Line> Lines, Zone Zone, bool HoldsLiquid, bool TakesDischarge, bool GivesSuction)
{
    /// <summary>The part it is known by: the vessel if there is one, else another part, else its first line.</summary>
    public string Name => Parts.OfType<VesselPart>().FirstOrDefault()?.Name
        ?? Parts.FirstOrDefault(p => p is not ReliefPart)?.Name
        ?? (Lines.Count > 0 ? $"{Lines[0].From} to {Lines[0].To}" : Parts[0].Name);

    /// <summary>The relief devices on it.</summary>
    public IEnumerable<ReliefPart> Reliefs => Parts.OfType<ReliefPart>();

    /// <summary>
    /// True when what boils in it has somewhere to go: into the open through a flask, or through the compressor's suction and its valves into
    /// the high side. With the high side joined to it by an open throttle that is the gas space of the whole loop, and the pressure that of standstill.
    /// </summary>
    public bool HasRoom => GivesSuction || Parts.Any(p => p is FlaskPart);

    /// <summary>True when the compressor's own valves close it: gas can be pumped in, but not back out, and no open throttle leads to the low side.</summary>
    public bool IsBlockedHighSide => TakesDischarge && !HasRoom;
}
