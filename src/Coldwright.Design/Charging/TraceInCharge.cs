namespace Coldwright.Design.Charging;

/// <summary>Something in the charge that does not belong there.</summary>
/// <param name="Name">Canonical name; oxygen for the oxygen of air.</param>
/// <param name="FromPump">Left by the pump, mol/mol of the charge; at most.</param>
/// <param name="FromGases">Brought by the gases as the shop describes them, mol/mol.</param>
/// <param name="FreezesAtK">Where it begins to freeze out of the high-pressure stream, K; null: it stays dissolved, or nothing is known of its solid.</param>
/// <param name="AllowedAtColdest">What stays dissolved at the coldest temperature, mol/mol; null as above.</param>
public sealed record TraceInCharge(string Name, double FromPump, double FromGases, double? FreezesAtK, double? AllowedAtColdest)
{
    /// <summary>mol/mol.</summary>
    public double Total => FromPump + FromGases;
    /// <summary>True when some of it freezes in the cold end.</summary>
    public bool Freezes => AllowedAtColdest is { } allowed && Total > allowed;
}
