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
public sealed record PlugPoint(string Contaminant, double MoleFraction, double PressurePa, double TemperatureK, double? ClearsBelowK);

/// <summary>
/// Water and carbon dioxide (or any other component) at ppm levels: the stream's phases are found without the trace, which then
/// distributes over them at infinite dilution. Its fugacity is f = z p / sum_k (beta_k / phi_k) with the phase fractions beta_k
/// and its fugacity coefficients phi_k, the material balance of a trace. Good up to about a mole per cent. Not thread-safe.
/// </summary>
public sealed class Contaminants
{
    private const double StepK = 1;

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
        if (!(moleFraction > 0 && moleFraction <= 0.05))
            throw new ArgumentOutOfRangeException(nameof(moleFraction), $"a trace has a mole fraction above 0 and up to 0.05, got {moleFraction}");
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
                return new PlugPoint(contaminant, moleFraction, pressurePa, at, Brent.Solve(F, t, f, next, g, 1e-9));
            (t, f) = (next, g);
        }
        return plug is { } found ? new PlugPoint(contaminant, moleFraction, pressurePa, found, null) : null;
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
