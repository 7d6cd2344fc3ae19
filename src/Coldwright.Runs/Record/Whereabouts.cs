namespace Coldwright.Runs.Record;

/// <summary>Which side of a part a sensor sits on.</summary>
public enum SensorEnd
{
    /// <summary>Where the stream comes in.</summary>
    Inlet,
    /// <summary>Where the stream leaves.</summary>
    Outlet,
    /// <summary>In the middle or the content.</summary>
    Inside,
    /// <summary>On the outside.</summary>
    Surface,
}

/// <summary>A place on the machine.</summary>
/// <param name="Port">Part, <c>part.stream</c>, <c>room</c> or <c>machine</c>.</param>
/// <param name="End">Which side of it.</param>
public sealed record Whereabouts(string Port, SensorEnd End)
{
    /// <summary>The room.</summary>
    public const string Room = "room";
    /// <summary>The machine as a whole (its electricity).</summary>
    public const string Machine = "machine";

    /// <summary>The part's name.</summary>
    public string Part => Port.IndexOf('.') is >= 0 and var dot ? Port[..dot] : Port;

    /// <inheritdoc/>
    public override string ToString() => End == SensorEnd.Inside ? Port : $"{Port} {End.ToString().ToLowerInvariant()}";
}
