using Coldwright.Machine.Description;
using Coldwright.Machine.Files;

namespace Coldwright.Machine.Layout;

/// <summary>Matches the product's way: feed, [precooler.feed], vessel, flask.</summary>
internal sealed class ProductMatch(MachineDescription machine, PathWalker walker, List<LayoutRefusal> refusals)
{
    /// <summary>The stations from the feed on; empty without a feed.</summary>
    public IReadOnlyList<PathStep> Path { get; private set; } = [];

    /// <summary>True when the feed passes the precooler.</summary>
    public bool IsPrecooled { get; private set; }

    /// <summary>Follows the feed; a misfit is refused. A vessel without feed is good: it is cooled as it stands.</summary>
    public void Match()
    {
        if (machine.PartsOf<FeedPart>().FirstOrDefault() is not { } feed) return;
        Path = walker.Walk(feed);
        var stations = Path.Where(s => s.Part is not ValvePart).ToList();
        var at = 1;
        if (at < stations.Count && stations[at].Part is PrecoolerPart && Ports.StreamName(stations[at].Port) == "feed")
        {
            IsPrecooled = true;
            at++;
        }
        if (!Expect<VesselPart>(stations, at++, IsPrecooled ? "a vessel" : "a precooler's feed stream or a vessel")) return;
        // Without a flask the product stays in the vessel; nothing leads on from a flask.
        if (at < stations.Count) Expect<FlaskPart>(stations, at, "a flask");
    }

    private bool Expect<T>(List<PathStep> stations, int at, string expected) where T : Part
    {
        if (at < stations.Count && stations[at].Part is T) return true;
        var before = stations[at - 1];
        refusals.Add(at < stations.Count
            ? new(stations[at].Line!.FileLine, $"after '{before.Port}' the product reaches '{stations[at].Port}' ({PartWords.KindOf(stations[at].Part).Word}); expected is {expected}")
            : new(before.Line?.FileLine ?? before.Part.FileLine, $"no line leads on from '{before.Port}'; expected is one to {expected}"));
        return false;
    }
}
