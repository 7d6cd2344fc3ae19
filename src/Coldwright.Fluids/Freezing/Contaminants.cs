using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;
using Coldwright.Numerics.Roots;

namespace Coldwright.Fluids.Freezing;

/// <summary>Where a trace freezes out of a stream.</summary>
/// <param name="Contaminant">Canonical name.</param>
/// <param name="MoleFraction">In the stream as a whole, mol/mol.</param>
/// <param name="PressurePa">Pa.</param>
/// <param name="TemperatureK">Where its solid first appears on cooling, K.</param>
/// <param name="ClearsBelowK">
/// Where liquid forming on further cooling has dissolved it again, K; null when it stays frozen down to the limit of the search.
/// </param>
/// <param name="GasFrostPointK">
/// Where its partial pressure z p equals the sublimation pressure, K: the frost point without the solvent power of gas and liquid,
/// so an upper bound that needs no fluid model. Null without a sublimation equation, or when it lies outside the equation's range.
/// </param>
public sealed record PlugPoint(string Contaminant, double MoleFraction, double PressurePa, double TemperatureK, double? ClearsBelowK,
    double? GasFrostPointK);

/// <summary>
/// Water and carbon dioxide (or any other component) at ppm levels: the stream's phases are found without the trace, which then
/// distributes over them at infinite dilution. Its fugacity is f = z p / sum_k (beta_k / phi_k) with the phase fractions beta_k
/// and its fugacity coefficients phi_k, the material balance of a trace. Good up to about a mole per cent. Not thread-safe.
/// </summary>
public sealed class Contaminants
{
    /// <summary>Largest mole fraction that is still called a trace.</summary>
    public const double LargestTrace = 0.02;

    private const double StepK = 1;

    // common practice: the gases of these coolers whose hydrates are well known
    private static readonly HashSet<string> HydrateFormers =
        ["nitrogen", "oxygen", "argon", "krypton", "xenon", "methane", "ethane", "ethylene", "propane", "propylene", "isobutane", "carbon-dioxide", "R22", "R23", "R32", "R134a"];
    private static readonly string[] HydrateWarning =
        ["hydrates are not considered: under pressure water may leave these gases as a hydrate at a higher temperature than as ice"];

    private readonly Flash _flash;
    private readonly SolidFugacity _solid;

    /// <param name="model">A model that has the contaminant among its components.</param>
    public Contaminants(HelmholtzModel model)
    {
        Model = model;
        _flash = new Flash(model);
        _solid = new SolidFugacity(model);
    }

    /// <summary>The reference model of a mixture with the contaminants that it does not have yet appended.</summary>
    /// <param name="names">Canonical names of the mixture.</param>
    /// <param name="contaminants">Canonical names of the contaminants.</param>
    public static Contaminants InReferenceModel(IReadOnlyList<string> names, params IReadOnlyList<string> contaminants) =>
        new(ReferenceModel.Create([.. names, .. contaminants.Except(names)]));

    /// <summary>The model, contaminants included.</summary>
    public HelmholtzModel Model { get; }

    /// <summary>What a person must be told: the model's own warnings, solids that do not fit it, and what is left out.</summary>
    public IReadOnlyList<string> Warnings
    {
        get
        {
            string[] names = Model.Substances.Select(s => s.Name).ToArray();
            bool hydrates = names.Contains("water") && names.Any(HydrateFormers.Contains);
            return [.. Model.Warnings, .. FreezingWarnings.Of(Model, _solid), .. hydrates ? HydrateWarning : Array.Empty<string>()];
        }
    }

    /// <summary>
    /// The mole fraction in the whole stream at which the contaminant is saturated with its solid (mol/mol); more
    /// than 1 means that no amount freezes. Null above its triple point.
    /// </summary>
    /// <param name="contaminant">Canonical name.</param>
    /// <param name="temperatureK">K.</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="z">Mole fractions of the stream in the model's order; the contaminant's own entry is left out and the rest scaled to 1. Trailing contaminants may be omitted.</param>
    public double? AllowedMoleFraction(string contaminant, double temperatureK, double pressurePa, IReadOnlyList<double> z)
    {
        int i = Index(contaminant);
        var allowed = LnAllowed(i, temperatureK, pressurePa, Carrier(i, z));
        return double.IsNaN(allowed) ? null : Math.Exp(allowed);
    }

    /// <summary>
    /// The temperature at which a trace begins to freeze on cooling a stream at constant pressure; null when it stays
    /// dissolved down to the limit.
    /// </summary>
    /// <param name="contaminant">Canonical name.</param>
    /// <param name="moleFraction">In the whole stream, mol/mol (1 ppm is 1e-6).</param>
    /// <param name="pressurePa">Pa.</param>
    /// <param name="z">As in <see cref="AllowedMoleFraction"/>.</param>
    /// <param name="lowestTemperatureK">Where the search ends, K.</param>
    /// <exception cref="Numerics.SolveException">A flash on the way has no answer.</exception>
    public PlugPoint? PlugTemperature(string contaminant, double moleFraction, double pressurePa, IReadOnlyList<double> z,
        double lowestTemperatureK = FreezingModel.DefaultLowestTemperatureK)
    {
        if (!(moleFraction > 0 && moleFraction <= LargestTrace))
            throw new ArgumentOutOfRangeException(nameof(moleFraction), $"a trace has a mole fraction above 0 and up to {LargestTrace}, got {moleFraction}");
        int i = Index(contaminant);
        var carrier = Carrier(i, z);
        double ln = Math.Log(moleFraction);
        double F(double t) => LnAllowed(i, t, pressurePa, carrier) - ln;
        double warm = _solid.Solids[i]!.TripleTemperatureK, f = F(warm);
        double? plug = f < 0 ? warm : null;
        for (double t = warm; t > lowestTemperatureK;)
        {
            double next = Math.Max(t - StepK, lowestTemperatureK), g = F(next);
            if (plug is null && g < 0) plug = Brent.Solve(F, t, f, next, g, 1e-9);
            else if (plug is { } at && f < 0 && g >= 0)
                return new PlugPoint(contaminant, moleFraction, pressurePa, at, Brent.Solve(F, t, f, next, g, 1e-9), FrostPoint(i, moleFraction * pressurePa));
            (t, f) = (next, g);
        }
        return plug is { } found ? new PlugPoint(contaminant, moleFraction, pressurePa, found, null, FrostPoint(i, moleFraction * pressurePa)) : null;
    }

    private double LnAllowed(int i, double t, double pressurePa, double[] carrier)
    {
        double solid = _solid.Ln(i, t, pressurePa);
        if (double.IsNaN(solid)) return solid;
        if (!_flash.TrySolve(t, pressurePa, carrier)) throw _flash.Failed(t, pressurePa);
        // the largest term first, so that nothing overflows: fugacity coefficients of ice in cold liquids span 40 decades
        var phases = _flash.State().Phases;
        double least = phases.Min(p => p.LnFugacityCoefficients[i]), sum = 0;
        foreach (var p in phases) sum += p.Fraction * Math.Exp(least - p.LnFugacityCoefficients[i]);
        return solid - Math.Log(pressurePa) + Math.Log(sum) - least;
    }

    private double? FrostPoint(int i, double partialPressurePa)
    {
        if (_solid.Solids[i]!.Sublimation is not { } curve || partialPressurePa > curve.TriplePressurePa) return null;
        double F(double t) => curve.LnPressure(t) - Math.Log(partialPressurePa);
        double low = curve.MinimumTemperatureK;
        return F(low) > 0 ? null : Brent.Solve(F, low, curve.TripleTemperatureK, 1e-9);
    }

    private int Index(string contaminant)
    {
        for (int i = 0; i < Model.Count; i++)
            if (Model.Substances[i].Name == contaminant)
                return _solid.Solids[i] is not null ? i
                    : throw new ArgumentException($"no data of solid {contaminant}; there are some of {string.Join(", ", SolidCatalog.Names)}", nameof(contaminant));
        throw new ArgumentException($"{contaminant} is not a component of the model ({string.Join(", ", Model.Substances.Select(s => s.Name))})", nameof(contaminant));
    }

    private double[] Carrier(int contaminant, IReadOnlyList<double> z)
    {
        if (z.Count > Model.Count) throw new ArgumentException($"at most {Model.Count} mole fractions expected, got {z.Count}", nameof(z));
        var carrier = new double[Model.Count];
        for (int i = 0; i < z.Count; i++) carrier[i] = i == contaminant ? 0 : z[i];
        double sum = carrier.Sum();
        if (!(sum > 0)) throw new ArgumentException("the stream has nothing but the contaminant", nameof(z));
        for (int i = 0; i < carrier.Length; i++) carrier[i] /= sum;
        return carrier;
    }
}
