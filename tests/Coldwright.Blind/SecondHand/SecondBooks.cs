namespace Coldwright.Blind.SecondHand;

/// <summary>What closes over a day of the second hand, J: out with the mixture = in from the room + from the feed + what the bodies gave up.</summary>
/// <param name="CarriedOff">By the mixture.</param>
/// <param name="FromRoom">Through foam, wires and rods.</param>
/// <param name="FromFeed">By condensing gas.</param>
/// <param name="FromBodies">Load, recuperator and foam, by their integrated heat capacities.</param>
public sealed record SecondBooks(double CarriedOff, double FromRoom, double FromFeed, double FromBodies)
{
    /// <summary>What is missing, as a share of what was carried off.</summary>
    public double Missing => (CarriedOff - FromRoom - FromFeed - FromBodies) / Math.Max(1, CarriedOff);
}
