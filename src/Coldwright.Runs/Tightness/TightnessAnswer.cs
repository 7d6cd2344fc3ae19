using Coldwright.Runs.Record;

namespace Coldwright.Runs.Tightness;

/// <summary>What the test in a record says; at most one of leak and proof is there.</summary>
/// <param name="Leak">Leak test; null when the record holds none or it cannot be evaluated.</param>
/// <param name="Proof">Proof test; null likewise.</param>
/// <param name="Complaint">Why a test cannot be evaluated; empty when it can or there is none.</param>
public sealed record TightnessAnswer(LeakTestResult? Leak, ProofTestResult? Proof, string Complaint)
{
    /// <summary>Evaluates the test in a record, if there is one.</summary>
    public static TightnessAnswer Of(RunRecord record)
    {
        var complaint = "";
        return record switch
        {
            { Test: null } => new(null, null, ""),
            { Kind: RunKind.LeakTest } => new(LeakTest.Evaluate(record, out complaint), null, complaint),
            _ => new(null, ProofTest.Evaluate(record, out complaint), complaint),
        };
    }

    /// <summary>The verdict; null when there is no test.</summary>
    public TightnessVerdict? Verdict => Leak?.Verdict ?? Proof?.Verdict ?? (Complaint.Length > 0 ? TightnessVerdict.CannotTell : null);
}
