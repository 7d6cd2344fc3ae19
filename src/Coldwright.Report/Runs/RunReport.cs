using Coldwright.Runs.Record;
using Coldwright.Runs.Tightness;
using Coldwright.Safety;

namespace Coldwright.Report.Runs;

/// <summary>An imported run, ready to be shown.</summary>
public sealed record RunReport
{
    /// <summary>The record.</summary>
    public required RunRecord Record { get; init; }
    /// <summary>What its test says.</summary>
    public required TightnessAnswer Answer { get; init; }
    /// <summary>Findings about the cooler, gravest first; empty when it could not be read.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    /// <summary>Units read first.</summary>
    public required UnitSystem Units { get; init; }

    /// <summary>Heading.</summary>
    public string Title => Record.Kind switch
    {
        RunKind.LeakTest => $"{Record.Name}: leak test",
        RunKind.ProofTest => $"{Record.Name}: proof test",
        _ => $"{Record.Name}: record of a run",
    };

    /// <summary>True when the record gives an answer that is no.</summary>
    public bool IsNo => Answer.Verdict is TightnessVerdict.Failed or TightnessVerdict.CannotTell || Record.Channels.All(c => c.GoodCount == 0);
}
