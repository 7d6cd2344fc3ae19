namespace Coldwright.Machine.Streams;

/// <summary>
/// How finely an isobar is sampled. Each tolerance is what a node may differ by from a cubic through its four neighbours;
/// the table made with all nodes errs by about a tenth of it (measured in the tests).
/// </summary>
/// <param name="TemperatureK">K, above 0.</param>
/// <param name="Fraction">Vapour fraction and quality, above 0.</param>
/// <param name="Relative">Densities and transport properties, relative, above 0.</param>
/// <param name="FirstStepK">First spacing, K, above 0.</param>
/// <param name="BoundaryK">Width left undecided at a change of phases, K, above 0.</param>
public sealed record StreamTableOptions(double TemperatureK = 0.15, double Fraction = 0.01, double Relative = 0.1, double FirstStepK = 10, double BoundaryK = 0.01)
{
    /// <summary>The usual ones.</summary>
    public static StreamTableOptions Default { get; } = new();

    internal void Check()
    {
        foreach (var (name, value) in new[] { (nameof(TemperatureK), TemperatureK), (nameof(Fraction), Fraction), (nameof(Relative), Relative), (nameof(FirstStepK), FirstStepK), (nameof(BoundaryK), BoundaryK) })
            if (!(value > 0) || !double.IsFinite(value)) throw new ArgumentException($"table option {name} must be above 0, got {value}");
    }
}
