namespace Coldwright.Runs.Next;

/// <summary>A change and what it would bring on the machine as it was found.</summary>
/// <param name="Id">Stable word.</param>
/// <param name="What">The change in words.</param>
/// <param name="LitresPerHour">Liquid condensed per hour then, less what flashes when it is let down, L/h at its normal boiling point; 0 where it does not get cold enough.</param>
/// <param name="Low">Lower end of the interval of 90 %, L/h.</param>
/// <param name="High">Upper end, L/h.</param>
/// <param name="EndK">Load at the end of a day like the recorded one, K.</param>
/// <param name="EnergyKWhPerL">Electricity per litre, kWh; null without liquid.</param>
public sealed record NextChange(string Id, string What, double LitresPerHour, double Low, double High, double EndK, double? EnergyKWhPerL);

/// <summary>Changes, the one that gains most first.</summary>
/// <param name="Now">The machine as it was found.</param>
/// <param name="Changes">Changes.</param>
/// <param name="Product">Name of the product; null for a cooler that makes none: changes are then ranked by temperature.</param>
/// <param name="Named">Causes that the run was explained by.</param>
/// <param name="Said">What a person must be told.</param>
public sealed record NextResult(NextChange Now, IReadOnlyList<NextChange> Changes, string? Product, IReadOnlyList<string> Named, IReadOnlyList<string> Said);
