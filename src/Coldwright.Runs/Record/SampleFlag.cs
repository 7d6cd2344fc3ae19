namespace Coldwright.Runs.Record;

/// <summary>What a sample is worth. Only <see cref="Good"/> ones carry weight.</summary>
public enum SampleFlag : byte
{
    /// <summary>Believed.</summary>
    Good,
    /// <summary>The cell is empty or says that there is no value; the neighbour's value stands in.</summary>
    Missing,
    /// <summary>The cell holds something that is no number; the neighbour's value stands in.</summary>
    Unreadable,
    /// <summary>Outside the sensor or outside what can be true (an open lead, an error code); the neighbour's value stands in.</summary>
    OutOfRange,
    /// <summary>One or two samples far from both neighbours; kept as written.</summary>
    Spike,
    /// <summary>The same figure repeated longer than the channel's own scatter allows; kept as written.</summary>
    Frozen,
}
