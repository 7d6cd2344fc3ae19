namespace Coldwright.Machine.Description;

/// <summary>A pipe between two ports. A port is <c>part</c> or <c>part.stream</c> (streams of exchangers: <c>high</c>, <c>low</c>, <c>feed</c>).</summary>
public sealed record Line
{
    /// <summary>Upstream port.</summary>
    public required string From { get; init; }
    /// <summary>Downstream port.</summary>
    public required string To { get; init; }
    /// <summary>Tube; null when the two parts are joined directly.</summary>
    public Tube? Tube { get; init; }
    /// <summary>Length, m.</summary>
    public double LengthM { get; init; }
    /// <summary>In the room or in the cold box. A line between a part in the room and a part in the cold box crosses the insulation.</summary>
    public Place Place { get; init; }
    /// <summary>Line number in the file, from 1.</summary>
    public int FileLine { get; init; }
}
