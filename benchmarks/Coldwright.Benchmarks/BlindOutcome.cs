using Coldwright.Blind;
using Coldwright.Runs.Explain;

namespace Coldwright.Benchmarks;

/// <summary>What became of one blind case.</summary>
/// <param name="Case">The case.</param>
/// <param name="Answer">The explanation; null where there was none.</param>
/// <param name="Seconds">Processor time of the explanation, s.</param>
/// <param name="Trouble">Why there was none; empty otherwise.</param>
internal sealed record BlindOutcome(BlindCase Case, Explanation? Answer, double Seconds, string Trouble)
{
    private const double Weighty = 0.2;
    private const int SetSize = 3;

    /// <summary>Faults worth more than a fifth of what is missing.</summary>
    public string[] Hidden { get; } = [.. Case.Truth.Faults.Where(f => Case.Worth[f.Id] > Weighty).Select(f => f.Id)];

    /// <summary>The first named, as many as there are hidden; one where nothing is.</summary>
    public string[] First => Answer is null ? [] : [.. Answer.Causes.Take(Math.Max(1, Hidden.Length)).Select(c => c.Id)];

    /// <summary>Every hidden fault is among the first; nothing hidden: <c>none</c> is first.</summary>
    public bool IsPlainlyRight => Answer is not null && (Hidden.Length == 0 ? First[0] == "none" : Hidden.All(First.Contains));

    /// <summary>Hidden faults that are not among the first but stand in a named tie with one that is: fault and what was named in its place.</summary>
    public IReadOnlyList<(string Fault, string Named)> Claimed => Answer is null ? [] :
    [
        .. Hidden.Where(h => !First.Contains(h)).Select(h => (h, Answer.Indistinguishable.FirstOrDefault(g => g.Contains(h) && g.Any(x => First.Contains(x) && !Hidden.Contains(x)))?.First(x => First.Contains(x) && !Hidden.Contains(x)) ?? "")),
    ];

    /// <summary>True when the ties it claims were found true by refitting.</summary>
    public bool TieHolds { get; init; }

    /// <summary>Right, by the first named or by a tie that holds.</summary>
    public bool IsRight => IsPlainlyRight || TieHolds;

    /// <summary>Every hidden fault (or <c>none</c>) is among the first named or in a named set of at most three.</summary>
    public bool IsInSet => IsRight || Answer is not null && (Hidden.Length == 0 ? Answer.Indistinguishable.Any(g => g.Contains("none"))
        : Hidden.All(h => First.Contains(h) || Answer.Indistinguishable.Any(g => g.Count <= SetSize && g.Contains(h))));
}
