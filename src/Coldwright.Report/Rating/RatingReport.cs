using Coldwright.Quantities;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>What a report about a rating is made from.</summary>
public sealed record RatingReport : CoolerReport
{
    /// <summary>The rating.</summary>
    public required RatingResult Result { get; init; }
    /// <summary>The parts, each rated alone; null when only the loop was rated.</summary>
    public PartRatings? Parts { get; init; }

    /// <summary>The default model's rating.</summary>
    internal ModelRating Main => Result.Main;

    /// <summary>Every warning once, the general ones first, those of the second model with its name; one that repeats the main model's with other digits is left out.</summary>
    internal IReadOnlyList<Spoken> Warnings
    {
        get
        {
            var second = Result.SecondOpinion?.Warnings ?? [];
            var known = Main.Warnings.Select(Words).ToHashSet(StringComparer.Ordinal);
            bool Repeats(Spoken warning) => second.Contains(warning) && !Main.Warnings.Contains(warning) && known.Contains(Words(warning));
            var seen = new List<Spoken>();
            foreach (var warning in Result.Warnings.Concat(Main.Warnings))
                if (!seen.Contains(warning) && !Repeats(warning)) seen.Add(warning);
            foreach (var warning in second.Where(w => !seen.Contains(w) && !Repeats(w)).ToArray()) seen.Add($"{Result.SecondOpinion!.Model} model: " + warning);
            return seen;
        }
    }

    // Two models say the same thing with slightly different figures.
    private static string Words(Spoken warning) => string.Concat(warning.ToString().Where(c => !char.IsAsciiDigit(c) && c != '.'));

    /// <summary>True when liquid is collected.</summary>
    internal bool MakesLiquid => Main.Liquid is { CollectedLPerH: > 0 };

    /// <summary>Findings of one weight or more, without the standing reminder.</summary>
    internal IEnumerable<Finding> FindingsAt(params Grade[] grades) => Findings.Where(f => grades.Contains(f.Grade) && f.Id != Cautions.LocalCodes.Id);
}
