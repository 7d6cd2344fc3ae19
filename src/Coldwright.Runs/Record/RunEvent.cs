namespace Coldwright.Runs.Record;

/// <summary>What was done.</summary>
public enum EventKind
{
    /// <summary>Switched on.</summary>
    Start,
    /// <summary>Switched off.</summary>
    Stop,
    /// <summary>Feed opened.</summary>
    FeedOn,
    /// <summary>Feed shut.</summary>
    FeedOff,
    /// <summary>A valve was opened.</summary>
    ValveOpen,
    /// <summary>A valve was shut.</summary>
    ValveShut,
    /// <summary>Something was weighed.</summary>
    Weighed,
    /// <summary>Something was changed on the machine.</summary>
    Changed,
    /// <summary>Something was seen or heard.</summary>
    Noted,
}

/// <summary>Something that was done or seen during a run.</summary>
/// <param name="TimeS">When, s from the start; before the log's first row it is negative.</param>
/// <param name="Kind">What.</param>
/// <param name="At">Part concerned; empty for the machine as a whole.</param>
/// <param name="MassKg">Net mass of a weighing, kg; null for others.</param>
/// <param name="MassUncertaintyKg">Its standard uncertainty, kg; null for others.</param>
/// <param name="Note">The writer's words; may be empty.</param>
/// <param name="FileLine">Line in <c>run.yaml</c>, from 1.</param>
public sealed record RunEvent(double TimeS, EventKind Kind, string At, double? MassKg, double? MassUncertaintyKg, string Note, int FileLine)
{
    /// <summary>The word in the file.</summary>
    public string Word => WordOf(Kind);

    /// <summary>The word of a kind in the file.</summary>
    public static string WordOf(EventKind kind) => kind switch
    {
        EventKind.FeedOn => "feed-on",
        EventKind.FeedOff => "feed-off",
        EventKind.ValveOpen => "valve-open",
        EventKind.ValveShut => "valve-shut",
        _ => kind.ToString().ToLowerInvariant(),
    };
}
