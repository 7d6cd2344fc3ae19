namespace Coldwright.Simulation.Parts;

/// <summary>All parts of a cooler that have a model of their own, each rated alone at one operating point.</summary>
/// <param name="Ratings">In file order.</param>
/// <param name="Left">Parts left out, with the reason: keys to add, or why the part's model has no answer.</param>
public sealed record PartRatings(IReadOnlyList<PartRating> Ratings, IReadOnlyList<(string Part, string Why)> Left);
