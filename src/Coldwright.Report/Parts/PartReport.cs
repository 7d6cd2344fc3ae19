using Coldwright.Machine.Description;
using Coldwright.Safety;
using Coldwright.Simulation.Parts;

namespace Coldwright.Report.Parts;

/// <summary>What a report about one part is made from.</summary>
public sealed record PartReport
{
    /// <summary>The cooler that the part belongs to.</summary>
    public required MachineDescription Machine { get; init; }
    /// <summary>The part's rating.</summary>
    public required PartRating Rating { get; init; }
    /// <summary>Safety findings: the grave ones of the whole cooler, the others that concern the part, the standing reminder last.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;

    /// <summary>Heading: <c>workshop cooler: compressor</c>, with the kind where the name is another word.</summary>
    internal string Title => $"{Machine.Name}: {Rating.Part}{(Rating.Part == Rating.Kind ? "" : $" ({Rating.Kind})")}";

    /// <summary>The findings without the standing reminder.</summary>
    internal IEnumerable<Finding> OwnFindings => Findings.Where(f => f.Id != Cautions.LocalCodes.Id);

    internal PartUnits PartUnits(bool typographic) => new(new Readout(Units, Machine.Room.PressurePa, typographic), Machine.Room.PressurePa);
}
