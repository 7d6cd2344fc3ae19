using Coldwright.Quantities;
using Coldwright.Simulation.Parts;

namespace Coldwright.Design.Sizing;

/// <summary>A piece to buy or cut.</summary>
/// <param name="What">Stock, as a shop names it.</param>
/// <param name="Amount">How much.</param>
/// <param name="Unit">m, kg, L or piece.</param>
/// <param name="PricePerUnit">In the shop's currency; null when the shop file does not say.</param>
public sealed record CutItem(string What, double Amount, string Unit, double? PricePerUnit = null)
{
    /// <summary>In the shop's currency; null when not known.</summary>
    public double? Cost => PricePerUnit * Amount;
}

/// <summary>One way to make a part.</summary>
public sealed record SizeOption
{
    /// <summary>The stock it is made of.</summary>
    public required string Stock { get; init; }
    /// <summary>Figures, SI; the first is what was asked for.</summary>
    public required IReadOnlyList<PartFigure> Figures { get; init; }
    /// <summary>Cut list.</summary>
    public required IReadOnlyList<CutItem> Cut { get; init; }
    /// <summary>Keys of the machine file with their text.</summary>
    public required IReadOnlyList<(string Key, string Text)> Keys { get; init; }
    /// <summary>Why it will not do; empty when it does.</summary>
    public Spoken WhyNot { get; init; } = "";

    /// <summary>True when it meets target and limits.</summary>
    public bool Fits => WhyNot.IsEmpty;
    /// <summary>Sum of the cut list; null when a price is not known.</summary>
    public double? Cost => Cut.Count > 0 && Cut.All(c => c.Cost is not null) ? Cut.Sum(c => c.Cost!.Value) : null;

    /// <summary>A figure by its id, SI.</summary>
    public double Figure(string id) => Figures.First(f => f.Id == id).Value!.Value;
}

/// <summary>A part sized: what it has to do, and the ways to make it, best first.</summary>
public sealed record SizeResult
{
    /// <summary>Name in the machine file.</summary>
    public required string Part { get; init; }
    /// <summary>Its kind.</summary>
    public required string Kind { get; init; }
    /// <summary>What it has to do.</summary>
    public required PartFigure Target { get; init; }
    /// <summary>Under what conditions; may be empty.</summary>
    public Spoken TargetRemark { get; init; } = "";
    /// <summary>How it was worked out.</summary>
    public required string Method { get; init; }
    /// <summary>Ways to make it: those that fit first, among them the cheapest, or the lightest where prices are not known.</summary>
    public required IReadOnlyList<SizeOption> Options { get; init; }
    /// <summary>Which figures a table shows, by id, first to last.</summary>
    public required IReadOnlyList<string> Columns { get; init; }
    /// <summary>Where model, formulas and stock come from.</summary>
    public required IReadOnlyList<string> Sources { get; init; }
    /// <summary>What a person must be told.</summary>
    public required IReadOnlyList<Spoken> Warnings { get; init; }
    /// <summary>True when it was stopped: some stock was not looked at.</summary>
    public bool Stopped { get; init; }

    /// <summary>The best way; null when nothing fits.</summary>
    public SizeOption? Best => Options.FirstOrDefault(o => o.Fits);
}
