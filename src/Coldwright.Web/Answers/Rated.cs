using Coldwright.Report;
using Coldwright.Report.Rating;
using Coldwright.Safety;
using Coldwright.Simulation.Rating;
using Coldwright.Web.Cooler;

namespace Coldwright.Web.Answers;

/// <summary>A rating of the folder as it was at one moment.</summary>
/// <param name="Files">What was rated.</param>
/// <param name="Result">The rating.</param>
/// <param name="Findings">Findings that follow from description and rating.</param>
/// <param name="Seconds">How long it took.</param>
internal sealed record Rated(Snapshot Files, RatingResult Result, IReadOnlyList<Finding> Findings, double Seconds)
{
    /// <summary>True when it knows what a step of each input would do.</summary>
    public bool HasSlopes => Result.Main.Closed?.Sensitivity is not null;

    /// <summary>The same for the report's views.</summary>
    public RatingReport Report(UnitSystem units) => new()
    {
        Machine = Files.Folder.Machine!,
        Result = Result with { Warnings = [.. Result.Warnings, .. Files.Folder.Notes] },
        Findings = Findings,
        Units = units,
    };
}
