using Coldwright.Machine.Description;
using Coldwright.Safety;

namespace Coldwright.Report.Safety;

/// <summary>What a report about a machine's safety is made from.</summary>
public sealed record SafetyReport
{
    /// <summary>The machine.</summary>
    public required MachineDescription Machine { get; init; }
    /// <summary>What was found.</summary>
    public required SafetyReview Review { get; init; }
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;

    /// <summary>True when a danger or a serious finding stands.</summary>
    public bool HasGrave => Review.Findings.Any(GraveLines.IsGrave);

    /// <summary>Findings of some grades, without the standing reminder.</summary>
    internal Finding[] At(params Grade[] grades) => Review.Findings.Where(f => grades.Contains(f.Grade) && f.Id != Cautions.LocalCodes.Id).ToArray();

    /// <summary>The answer in a sentence.</summary>
    internal string Verdict
    {
        get
        {
            var (danger, serious, caution) = (At(Grade.Stop).Length, At(Grade.Serious).Length, At(Grade.Caution).Length);
            var rest = $"{Count(caution, "caution")} and {Count(At(Grade.Note).Length, "note")}";
            return danger > 0 ? $"Do not build or run it like this: {Count(danger, "danger")}{(serious > 0 ? $", {serious} serious" : "")}; {rest}."
                : serious > 0 ? $"{Count(serious, "serious finding")} to mend or to have judged by someone competent; {rest}."
                : $"Nothing serious was found; {rest}. What this list cannot see: workmanship, corrosion, what the file leaves out.";
        }
    }

    internal Readout Readout(bool typographic) => new(Units, Machine.Room.PressurePa, typographic);

    private static string Count(int number, string word) => $"{number} {word}{(number == 1 ? "" : "s")}";
}
