using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.States;
using Coldwright.Numerics;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// Phase equilibrium for any model: from temperature and pressure, pressure and enthalpy or entropy, temperature or
/// pressure and vapour fraction. Every answer carries a stability certificate. Not thread-safe: one object per thread.
/// </summary>
public sealed class Flash
{
    /// <summary>Coldest temperature that a search by enthalpy, entropy or vapour fraction goes down to, K; far below every use of the machines described here.</summary>
    public const double LowestTemperatureK = 20;

    private readonly EquilibriumSolver _solver;
    private readonly CaloricFlash _caloric;

    /// <param name="model">The fluid model.</param>
    public Flash(HelmholtzModel model)
    {
        Model = model;
        _solver = new EquilibriumSolver(model);
        _caloric = new CaloricFlash(this);
    }

    /// <summary>The model.</summary>
    public HelmholtzModel Model { get; }

    /// <summary>What the last solve did.</summary>
    public SolveReport Report { get; private set; } = new(SolveStatus.Solved, 0, 0);

    /// <summary>Density roots refused by the admissibility rule since construction.</summary>
    public long RejectedRoots => _solver.Evaluation.RejectedRoots;

    internal EquilibriumSolver Solver => _solver;

    /// <summary>
    /// Solves at temperature (K) and pressure (Pa) without building a result; read it with <see cref="Enthalpy"/>,
    /// <see cref="Entropy"/>, <see cref="VapourFraction"/> or <see cref="State"/>. Allocates nothing.
    /// </summary>
    /// <param name="temperatureK">K, above 0.</param>
    /// <param name="pressurePa">Pa, above 0.</param>
    /// <param name="z">Overall mole fractions, sum 1.</param>
    /// <param name="warm">Start from the previous answer; the certificate is the same.</param>
    public bool TrySolve(double temperatureK, double pressurePa, ReadOnlySpan<double> z, bool warm = false)
    {
        if (!(temperatureK > 0) || !(pressurePa > 0) || !double.IsFinite(temperatureK) || !double.IsFinite(pressurePa))
            throw new ArgumentOutOfRangeException(nameof(temperatureK), $"temperature and pressure must be above 0, got {temperatureK} K and {pressurePa} Pa");
        if (z.Length != Model.Count) throw new ArgumentException($"{Model.Count} mole fractions expected, got {z.Length}", nameof(z));
        return _solver.Solve(temperatureK, pressurePa, z, warm);
    }

    /// <summary>
    /// Moves the phases of the last answer, all of them, to a nearby state and composition. No certificate: for states between two certified ones
    /// of the same phases. False when they do not settle there or one is lost; then ask for a certified answer.
    /// </summary>
    /// <param name="temperatureK">K, above 0.</param>
    /// <param name="pressurePa">Pa, above 0.</param>
    /// <param name="z">Overall mole fractions, sum 1.</param>
    public bool TryFollow(double temperatureK, double pressurePa, ReadOnlySpan<double> z) => _solver.Phases.Length > 0 && _solver.TryFollow(temperatureK, pressurePa, z);

    /// <summary>As <see cref="TryFollow"/>, from a vapour and a liquid given; from the overall composition where it is vapour or liquid alone.</summary>
    /// <param name="seed">Where to begin.</param>
    /// <param name="temperatureK">K, above 0.</param>
    /// <param name="pressurePa">Pa, above 0.</param>
    /// <param name="z">Overall mole fractions, sum 1.</param>
    public bool TryFollowFrom(PhaseSeed seed, double temperatureK, double pressurePa, ReadOnlySpan<double> z) => _solver.TryFollowFrom(seed, temperatureK, pressurePa, z);

    /// <summary>Puts vapour and liquid of the last answer into a seed; false where it has neither one phase nor vapour and one liquid.</summary>
    /// <param name="seed">Overwritten.</param>
    public bool TryRead(PhaseSeed seed)
    {
        var phases = _solver.Phases;
        if (phases.Length is 0 or > 2 || phases.Length == 2 && PhaseNaming.KindOf(phases, 0) != PhaseKind.Vapour) return false;
        seed.VapourFraction = VapourFraction();
        if (phases.Length == 1) return true;
        phases[0].X.CopyTo(seed.Vapour, 0);
        phases[1].X.CopyTo(seed.Liquid, 0);
        (seed.VapourDensity, seed.LiquidDensity) = (phases[0].Density, phases[1].Density);
        return true;
    }

    /// <summary>As <see cref="TryFollow"/>, at a pressure (Pa) and an enthalpy (J/mol), of the last answer's composition; not for pure substances.</summary>
    /// <param name="pressurePa">Pa, above 0.</param>
    /// <param name="molarEnthalpy">J/mol.</param>
    /// <param name="z">Overall mole fractions: those of the last answer.</param>
    /// <param name="temperatureGuessK">K.</param>
    public bool TryFollowPressureEnthalpy(double pressurePa, double molarEnthalpy, ReadOnlySpan<double> z, double temperatureGuessK) =>
        _solver.Phases.Length > 0 && z.Length > 1 && _solver.Holds(z) && _solver.TryFollowCaloric(pressurePa, molarEnthalpy, enthalpy: true, temperatureGuessK);

    /// <summary>The last answer's phases, to be taken up again by <see cref="Return"/>.</summary>
    public FlashMark Mark() => _solver.Mark();

    /// <summary>Takes up the phases of an earlier answer of the same model as those of the last one, to be moved on from there by <see cref="TryFollow"/> and its like.</summary>
    public void Return(FlashMark mark)
    {
        if (mark.Z.Length != Model.Count) throw new ArgumentException($"a mark of {mark.Z.Length} substances in a model of {Model.Count}", nameof(mark));
        _solver.Return(mark);
    }

    /// <summary>Overall enthalpy of the last solve, J/mol.</summary>
    public double Enthalpy()
    {
        // the ideal part is linear in the amounts: that of the whole
        double t = _solver.Temperature;
        return PhaseProperties.IdealEnthalpy(Model, t, _solver.Z) + Model.GasConstant * t * PhaseSums.ResidualEnthalpy(_solver.Phases);
    }

    /// <summary>Overall entropy of the last solve, J/(mol K).</summary>
    public double Entropy()
    {
        return PhaseProperties.IdealEntropy(Model, _solver.Temperature, _solver.Pressure, _solver.Z) + Model.GasConstant * PhaseSums.EntropyOfMixing(_solver.Phases);
    }

    /// <summary>Overall molar density of the last solve, mol/m3.</summary>
    public double Density()
    {
        double volume = 0;
        foreach (var phase in _solver.Phases) volume += phase.Fraction / phase.Density;
        return 1 / volume;
    }

    /// <summary>Temperature of the last solve, K.</summary>
    public double TemperatureK => _solver.Temperature;

    /// <summary>Pressure of the last solve, Pa.</summary>
    public double PressurePa => _solver.Pressure;

    /// <summary>Number of phases of the last solve.</summary>
    public int PhaseCount => _solver.Phases.Length;

    /// <summary>Names of the phases of the last solve, joined: one of a few constant strings, so nothing is allocated.</summary>
    public string PhaseNames() => PhaseNaming.Names(_solver.Phases);

    /// <summary>Mole fraction of each phase of the last solve in the whole, in the order of <see cref="PhaseNames"/>.</summary>
    public double[] PhaseFractions()
    {
        var fractions = new double[_solver.Phases.Length];
        for (int j = 0; j < fractions.Length; j++) fractions[j] = _solver.Phases[j].Fraction;
        return fractions;
    }

    /// <summary>Vapour fraction of the last solve.</summary>
    public double VapourFraction()
    {
        double sum = 0;
        var phases = _solver.Phases;
        for (int j = 0; j < phases.Length; j++)
            if (PhaseNaming.KindOf(phases, j) == PhaseKind.Vapour) sum += phases[j].Fraction;
        return sum;
    }

    /// <summary>The last solve as an immutable state.</summary>
    public FluidState State() => StateBuilder.Build(_solver);

    /// <summary>State at temperature (K) and pressure (Pa).</summary>
    /// <exception cref="SolveException">No answer; the report says why.</exception>
    public FluidState TemperaturePressure(double temperatureK, double pressurePa, ReadOnlySpan<double> z)
    {
        if (!TrySolve(temperatureK, pressurePa, z)) throw Failed(temperatureK, pressurePa);
        return State();
    }

    /// <summary>State at pressure (Pa) and molar enthalpy (J/mol).</summary>
    /// <exception cref="SolveException">No answer; the report says why.</exception>
    public FluidState PressureEnthalpy(double pressurePa, double molarEnthalpy, ReadOnlySpan<double> z, double temperatureGuessK = double.NaN) =>
        _caloric.Solve(pressurePa, molarEnthalpy, z, enthalpy: true, temperatureGuessK);

    /// <summary>State at pressure (Pa) and molar entropy (J/(mol K)).</summary>
    /// <exception cref="SolveException">No answer; the report says why.</exception>
    public FluidState PressureEntropy(double pressurePa, double molarEntropy, ReadOnlySpan<double> z, double temperatureGuessK = double.NaN) =>
        _caloric.Solve(pressurePa, molarEntropy, z, enthalpy: false, temperatureGuessK);

    /// <summary>
    /// As <see cref="PressureEnthalpy"/> for inner loops: the answer is read with <see cref="Enthalpy"/>, <see cref="State"/> and
    /// the like, and nothing is allocated. False when the answer lies inside a step narrower than rounding, which only
    /// <see cref="PressureEnthalpy"/> can express.
    /// </summary>
    /// <exception cref="SolveException">No answer; the report says why.</exception>
    public bool TrySolvePressureEnthalpy(double pressurePa, double molarEnthalpy, ReadOnlySpan<double> z, double temperatureGuessK = double.NaN) =>
        _caloric.TrySolve(pressurePa, molarEnthalpy, z, enthalpy: true, temperatureGuessK);

    /// <summary>As <see cref="TrySolvePressureEnthalpy"/>, from entropy (J/(mol K)).</summary>
    /// <exception cref="SolveException">No answer; the report says why.</exception>
    public bool TrySolvePressureEntropy(double pressurePa, double molarEntropy, ReadOnlySpan<double> z, double temperatureGuessK = double.NaN) =>
        _caloric.TrySolve(pressurePa, molarEntropy, z, enthalpy: false, temperatureGuessK);

    /// <summary>State at temperature (K) and vapour fraction (0 bubble point, 1 dew point).</summary>
    /// <exception cref="SolveException">No answer; the report says why.</exception>
    public FluidState TemperatureVapourFraction(double temperatureK, double vapourFraction, ReadOnlySpan<double> z) =>
        VapourFractionFlash.AtTemperature(this, temperatureK, vapourFraction, z);

    /// <summary>State at pressure (Pa) and vapour fraction (0 bubble point, 1 dew point).</summary>
    /// <exception cref="SolveException">No answer; the report says why.</exception>
    public FluidState PressureVapourFraction(double pressurePa, double vapourFraction, ReadOnlySpan<double> z) =>
        VapourFractionFlash.AtPressure(this, pressurePa, vapourFraction, z);

    internal SolveException Failed(double t, double p) => new(new SolveReport(SolveStatus.NotConverged, _solver.Rounds, _solver.Residual,
        FormattableString.Invariant($"no phase equilibrium found at {t:0.###} K and {p / 1e5:0.####} bar absolute: {_solver.Failure}")));
}
