using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.States;

namespace Coldwright.Fluids.Freezing;

/// <summary>
/// Which component of a mixture freezes, where, and with how much margin: pure solids against the fluid phases of any
/// model. Solid solutions and compounds (hydrates) are not considered. Melting lines are taken as vertical in
/// temperature. Theory: docs/theory/freezing.md. Not thread-safe: one object per thread.
/// </summary>
public sealed class FreezingModel
{
    /// <summary>Coldest temperature that searches go down to unless told otherwise, K: just below solid nitrogen's triple point.</summary>
    public const double DefaultLowestTemperatureK = 60;

    private const double StepK = 2;

    private readonly Flash _flash;
    private readonly SolidFugacity _solid;
    private readonly LiquidSolubility _solubility;

    /// <param name="model">The fluid model.</param>
    public FreezingModel(HelmholtzModel model)
    {
        Model = model;
        _flash = new Flash(model);
        _solid = new SolidFugacity(model);
        _solubility = new LiquidSolubility(model);
    }

    /// <summary>The fluid model.</summary>
    public HelmholtzModel Model { get; }

    /// <summary>
    /// What a person must be told about the answers given so far: the model's own warnings, components without data of
    /// their solid, liquids that had to be extrapolated or do not fit the published solid.
    /// </summary>
    public IReadOnlyList<string> Warnings => [.. Model.Warnings, .. NoData(), .. FreezingWarnings.Of(Model, _solid)];

    /// <summary>Margin of every component at a state, in the order of the model's components.</summary>
    /// <param name="state">A state of this model.</param>
    /// <param name="searchTemperatures">Also search the freezing temperature of each component (some hundred flashes).</param>
    public IReadOnlyList<FreezingMargin> At(FluidState state, bool searchTemperatures = true)
    {
        CheckAmounts(state.Composition);
        var points = searchTemperatures ? FreezingTemperatures(state.PressurePa, state.Composition) : [];
        var margins = new FreezingMargin[Model.Count];
        for (int i = 0; i < margins.Length; i++)
        {
            string name = Model.Substances[i].Name;
            double ln = LnMargin(i, state);
            margins[i] = new FreezingMargin
            {
                Component = name,
                Status = StatusOf(i, state, ln),
                Margin = double.IsNaN(ln) ? null : Math.Exp(ln),
                IdealSolubility = double.IsNaN(ln) ? null : IdealSolubility.MoleFraction(_solid.Solids[i]!, state.TemperatureK),
                Solubilities = double.IsNaN(ln) ? [] : Solubilities(i, state),
                FreezingTemperatureK = points.FirstOrDefault(p => p.Component == name)?.TemperatureK,
            };
        }
        return margins;
    }

    /// <summary>The first solid on cooling along an isobar, the phases found anew at every temperature; null when none appears down to the limit.</summary>
    /// <param name="pressurePa">Pressure, Pa.</param>
    /// <param name="z">Overall mole fractions.</param>
    /// <param name="lowestTemperatureK">Where the search ends, K.</param>
    /// <exception cref="Numerics.SolveException">A flash on the way has no answer.</exception>
    public FreezingPoint? FreezingTemperature(double pressurePa, IReadOnlyList<double> z, double lowestTemperatureK = DefaultLowestTemperatureK) =>
        Walk(pressurePa, z, lowestTemperatureK, firstOnly: true).FirstOrDefault();

    /// <summary>
    /// Where each component begins to freeze on cooling along an isobar, warmest first. All but the first are
    /// metastable: the solids that appear before are not taken out.
    /// </summary>
    /// <param name="pressurePa">Pressure, Pa.</param>
    /// <param name="z">Overall mole fractions.</param>
    /// <param name="lowestTemperatureK">Where the search ends, K.</param>
    /// <exception cref="Numerics.SolveException">A flash on the way has no answer.</exception>
    public IReadOnlyList<FreezingPoint> FreezingTemperatures(double pressurePa, IReadOnlyList<double> z, double lowestTemperatureK = DefaultLowestTemperatureK) =>
        Walk(pressurePa, z, lowestTemperatureK, firstOnly: false);

    /// <summary>Freezing along a path of one composition, such as a stream through an exchanger.</summary>
    /// <param name="path">Temperatures (K) and pressures (Pa) in the order of flow.</param>
    /// <param name="z">Overall mole fractions.</param>
    /// <exception cref="Numerics.SolveException">A flash on the way has no answer.</exception>
    public PathFreezing AlongPath(IEnumerable<(double TemperatureK, double PressurePa)> path, IReadOnlyList<double> z)
    {
        CheckAmounts(z);
        PathPoint? first = null, least = null;
        var before = new double[Model.Count];
        Array.Fill(before, double.NaN);
        (double T, double P) previous = default;
        double coldest = double.PositiveInfinity;
        int place = 0;
        foreach (var (t, p) in path)
        {
            var state = Solve(t, p, z, warm: place > 0);
            coldest = Math.Min(coldest, t);
            PathPoint? here = null;
            for (int i = 0; i < Model.Count; i++)
            {
                double ln = LnMargin(i, state);
                if (double.IsNaN(ln))
                {
                    before[i] = ln;
                    continue;
                }
                string name = Model.Substances[i].Name;
                if (least is null || ln < Math.Log(least.Margin)) least = new PathPoint(name, place, t, p, Math.Exp(ln));
                if (first is null && ln < 0)
                {
                    // between the last point without and the first with the solid, straight in ln of the margin
                    double back = before[i] > 0 ? ln / (ln - before[i]) : 0;
                    var found = new PathPoint(name, place - back, t - back * (t - previous.T), p - back * (p - previous.P), back > 0 ? 1 : Math.Exp(ln));
                    if (here is null || found.Place < here.Place) here = found;
                }
                before[i] = ln;
            }
            first ??= here;
            previous = (t, p);
            place++;
        }
        var missing = Enumerable.Range(0, Model.Count).Where(i => z[i] > 0 && LacksData(i, coldest)).Select(NoDataText);
        return new PathFreezing(first, least, [.. Model.Warnings, .. missing, .. FreezingWarnings.Of(Model, _solid)]);
    }

    /// <summary>ln of the margin; NaN where there is none to speak of.</summary>
    internal double LnMargin(int component, FluidState state)
    {
        if (!(state.Composition[component] > 0)) return double.NaN;
        double solid = _solid.Ln(component, state.TemperatureK, state.PressurePa);
        if (double.IsNaN(solid)) return solid;
        // the fugacity is the same in all phases; where there is most of it, it is the most exact
        var phase = state.Phases.MaxBy(p => p.Composition[component])!;
        return solid - Math.Log(phase.Composition[component] * state.PressurePa) - phase.LnFugacityCoefficients[component];
    }

    private List<FreezingPoint> Walk(double pressurePa, IReadOnlyList<double> z, double lowestK, bool firstOnly)
    {
        CheckAmounts(z);
        var open = Enumerable.Range(0, Model.Count).Where(i => z[i] > 0 && _solid.Solids[i] is not null).ToHashSet();
        var found = new List<FreezingPoint>();
        double before = double.NaN;
        foreach (double t in Grid(open, lowestK))
        {
            if (open.Count == 0 || firstOnly && found.Count > 0) break;
            var state = Solve(t, pressurePa, z, warm: !double.IsNaN(before));
            foreach (int i in open.ToArray())
            {
                if (!(LnMargin(i, state) <= 1e-12)) continue;
                double triple = _solid.Solids[i]!.TripleTemperatureK;
                double at = t == triple ? t : FreezingBetween(i, t, Math.Min(before, triple), pressurePa, z);
                found.Add(new FreezingPoint(Model.Substances[i].Name, at, pressurePa));
                open.Remove(i);
            }
            before = t;
        }
        return [.. found.OrderByDescending(f => f.TemperatureK)];
    }

    // from the warmest triple point down, through every triple point: below its own each component must begin unfrozen
    private IEnumerable<double> Grid(HashSet<int> components, double lowestK)
    {
        var triples = components.Select(i => _solid.Solids[i]!.TripleTemperatureK).Where(t => t > lowestK).ToArray();
        if (triples.Length == 0) return [];
        double top = triples.Max();
        int steps = (int)Math.Floor((top - lowestK) / StepK);
        return Enumerable.Range(0, steps + 1).Select(k => top - StepK * k).Concat(triples).Append(lowestK).Distinct().OrderDescending().ToArray();
    }

    private double FreezingBetween(int component, double frozenK, double clearK, double pressurePa, IReadOnlyList<double> z)
    {
        double F(double t) => LnMargin(component, Solve(t, pressurePa, z, warm: false));
        return F(clearK) <= 0 ? clearK : Numerics.Roots.Brent.Solve(F, frozenK, clearK, 1e-9);
    }

    private FluidState Solve(double t, double pressurePa, IReadOnlyList<double> z, bool warm)
    {
        double[] amounts = z as double[] ?? z.ToArray();
        return _flash.TrySolve(t, pressurePa, amounts, warm) ? _flash.State() : throw _flash.Failed(t, pressurePa);
    }

    private IReadOnlyList<PhaseSolubility> Solubilities(int component, FluidState state) =>
        state.Phases.Where(p => p.Kind != PhaseKind.Vapour && p.Composition[component] > 0).Select(p => new PhaseSolubility(p.Kind, p.Composition[component],
            _solubility.MoleFraction(component, state.TemperatureK, state.PressurePa, p.Composition,
                _solid.Ln(component, state.TemperatureK, state.PressurePa)))).ToArray();

    private FreezingStatus StatusOf(int i, FluidState state, double ln) =>
        !(state.Composition[i] > 0) ? FreezingStatus.Absent
        : !double.IsNaN(ln) ? FreezingStatus.Calculated
        : LacksData(i, state.TemperatureK) || state.TemperatureK <= TripleK(i) ? FreezingStatus.NoData : FreezingStatus.AboveTriplePoint;

    private double TripleK(int i) => _solid.Solids[i]?.TripleTemperatureK ?? Model.Substances[i].TripleTemperatureK;

    private bool LacksData(int i, double temperatureK) => _solid.Solids[i] is null && temperatureK <= TripleK(i);

    private string NoDataText(int i) => FormattableString.Invariant(
        $"freezing of {Model.Substances[i].Name} is not checked below its triple point ({TripleK(i):0.0} K): no heat of fusion at hand");

    private IEnumerable<string> NoData() => Enumerable.Range(0, Model.Count).Where(i => _solid.Solids[i] is null).Select(NoDataText);

    private void CheckAmounts(IReadOnlyList<double> z)
    {
        if (z.Count != Model.Count) throw new ArgumentException($"{Model.Count} mole fractions expected, got {z.Count}", nameof(z));
    }
}
