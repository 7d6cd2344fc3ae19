using Coldwright.Machine.Description;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;
using Coldwright.Simulation.Rating;

namespace Coldwright.Report.Rating;

/// <summary>What a report about a rating is made from.</summary>
public sealed record RatingReport
{
    /// <summary>The cooler that was rated.</summary>
    public required MachineDescription Machine { get; init; }
    /// <summary>The rating.</summary>
    public required RatingResult Result { get; init; }
    /// <summary>Safety findings, gravest first, the standing reminder last.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    /// <summary>The parts, each rated alone; null when only the loop was rated.</summary>
    public PartRatings? Parts { get; init; }
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;

    /// <summary>The default model's rating.</summary>
    internal ModelRating Main => Result.Main;

    /// <summary>Every warning once, the general ones first, those of the second model with its name.</summary>
    internal IReadOnlyList<string> Warnings
    {
        get
        {
            var seen = new List<string>();
            foreach (var warning in Result.Warnings.Concat(Main.Warnings))
                if (!seen.Contains(warning)) seen.Add(warning);
            if (Result.SecondOpinion is { } second)
                foreach (var warning in second.Warnings.Where(w => !seen.Contains(w)).ToArray()) seen.Add($"{second.Model} model: {warning}");
            return seen;
        }
    }

    /// <summary>True when liquid is collected.</summary>
    internal bool MakesLiquid => Main.Liquid is { CollectedLPerH: > 0 };

    /// <summary>Findings of one weight or more, without the standing reminder.</summary>
    internal IEnumerable<Finding> FindingsAt(params Grade[] grades) => Findings.Where(f => grades.Contains(f.Grade) && f.Id != Cautions.LocalCodes.Id);

    internal Readout Readout(bool typographic) => new(Units, Machine.Room.PressurePa, typographic);
}
