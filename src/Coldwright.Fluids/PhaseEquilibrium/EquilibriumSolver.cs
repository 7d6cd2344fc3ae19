using Coldwright.Fluids.EquationsOfState;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// Phase equilibrium at given temperature and pressure: feed stability, split, and a stability certificate of the
/// result; phases are added while the certificate fails and dropped when they vanish. One object per thread; nothing is
/// allocated after construction.
/// </summary>
internal sealed class EquilibriumSolver
{
    /// <summary>
    /// Exactly on a phase boundary a phase comes and goes with rounding. An instability shallower than this (units of RT)
    /// changes the Gibbs energy by less than its square, below rounding.
    /// </summary>
    private const double Negligible = 3e-8;

    private readonly FlashWorkspace _w;
    private readonly TangentPlaneStability _stability;
    private readonly PhaseSplit _split;
    private readonly CaloricSplit _caloric;
    private readonly double[] _d;
    private readonly PhaseBuffer[] _phases, _saved, _kept;
    private int _count, _savedCount;
    private bool _unstable, _track, _solved;

    public EquilibriumSolver(HelmholtzModel model)
    {
        Model = model;
        _w = new FlashWorkspace(model);
        _stability = new TangentPlaneStability(_w);
        var step = new SplitStep(_w);
        (_split, _caloric) = (new PhaseSplit(_w, step), new CaloricSplit(_w, step));
        _d = new double[model.Count];
        _phases = Buffers(model.Count);
        _saved = Buffers(model.Count);
        _kept = Buffers(model.Count);
    }

    private static PhaseBuffer[] Buffers(int n) => Enumerable.Range(0, FlashWorkspace.MaximumPhases).Select(_ => new PhaseBuffer(n)).ToArray();

    public HelmholtzModel Model { get; }
    public PhaseEvaluation Evaluation => _w.Evaluation;
    public double Temperature => _w.Temperature;
    public double Pressure => _w.Pressure;
    public ReadOnlySpan<double> Z => _w.Z;

    /// <summary>Phases of the last solve, in the order of <see cref="PhaseNaming"/>.</summary>
    public ReadOnlySpan<PhaseBuffer> Phases => _phases.AsSpan(0, _count);

    /// <summary>Largest difference of ln f between phases.</summary>
    public double Residual { get; private set; }

    /// <summary>Ways of the starts of a certificate.</summary>
    public StartPaths StartPaths => _stability.Paths;

    /// <summary>Rounds of split and certificate.</summary>
    public int Rounds { get; private set; }

    /// <summary>Why the last solve failed; empty when it did not.</summary>
    public string Failure { get; private set; } = "";

    // where a start is looked for when a state can't be reached directly: neighbours, as shares of the temperature
    private static readonly double[] Detours = [-0.003, 0.003, -0.012, 0.012, -0.04, 0.04];

    /// <summary>
    /// Solves. <paramref name="warm"/>: start from the phases of the previous solve (same components, nearby state);
    /// the certificate is the same. A state whose split does not settle is reached from the answer at a neighbouring temperature.
    /// </summary>
    public bool Solve(double temperatureK, double pressurePa, ReadOnlySpan<double> z, bool warm = false) =>
        _solved = Search(temperatureK, pressurePa, z, warm);

    private bool Search(double temperatureK, double pressurePa, ReadOnlySpan<double> z, bool warm)
    {
        if (Direct(temperatureK, pressurePa, z, warm)) return true;
        if (_w.Count == 1) return false;
        var (failure, residual, rounds) = (Failure, Residual, Rounds);
        foreach (double detour in Detours)
            if (Direct(temperatureK * (1 + detour), pressurePa, z, warm: false) && _count > 1 && Direct(temperatureK, pressurePa, z, warm: true)) return true;
        (Failure, Residual, Rounds) = (failure, residual, rounds);
        return false;
    }

    private bool Direct(double temperatureK, double pressurePa, ReadOnlySpan<double> z, bool warm)
    {
        _w.Set(temperatureK, pressurePa, z);
        Residual = 0;
        Rounds = _savedCount = 0;
        Failure = "";
        // a pure substance has no other composition to split into: the better of its two roots is the answer
        if (_w.Count == 1) return StartFromFeed();
        _track = warm;
        if (warm && _count >= 2 && Grow(false)) return Finish();
        Failure = "";
        if (!StartFromFeed()) return StartApart() && Grow(true) && Finish();
        return (AddIncipient() ? Grow(true) : Certified()) && Finish();
    }

    /// <summary>
    /// Moves the phases of the previous solve to a nearby state without a certificate: for the inner steps of a search
    /// whose last step is certified. Where that does not settle, a full solve.
    /// </summary>
    public bool Follow(double temperatureK, double pressurePa, ReadOnlySpan<double> z)
    {
        if (_count < 2 || _w.Count == 1) return Solve(temperatureK, pressurePa, z);
        _w.Set(temperatureK, pressurePa, z);
        (Rounds, _savedCount, Failure) = (0, 0, "");
        var outcome = _split.Solve(_phases, ref _count, 0, balanced: false);
        Residual = _split.Residual;
        return outcome == SplitOutcome.Converged ? _solved = Finish() : Solve(temperatureK, pressurePa, z);
    }

    /// <summary>
    /// Moves the phases of the previous solve, all of them, to a nearby state and composition without a certificate. False: they do not settle,
    /// or one of them is lost; the phases from before stay, to be moved elsewhere.
    /// </summary>
    public bool TryFollow(double temperatureK, double pressurePa, ReadOnlySpan<double> z)
    {
        _w.Set(temperatureK, pressurePa, z);
        (Rounds, _savedCount, Failure, _solved) = (0, 0, "", false);
        if (_count == 1) return _solved = StartFromFeed();
        int count = _count;
        for (int j = 0; j < count; j++) _kept[j].CopyFrom(_phases[j]);
        if (_split.Solve(_phases, ref _count, 0, balanced: false) == SplitOutcome.Converged && _count == count) return _solved = Finish();
        for (int j = 0; j < count; j++) _phases[j].CopyFrom(_kept[j]);
        _count = count;
        return false;
    }

    /// <summary>As <see cref="TryFollow"/>, from a vapour and a liquid given.</summary>
    public bool TryFollowFrom(PhaseSeed seed, double temperatureK, double pressurePa, ReadOnlySpan<double> z)
    {
        (_count, double vapour) = (1, seed.VapourFraction);
        if (vapour is > 0 and < 1)
        {
            _count = 2;
            Put(_phases[0], seed.Vapour, vapour, seed.VapourDensity, Branch.Vapour);
            Put(_phases[1], seed.Liquid, 1 - vapour, seed.LiquidDensity, Branch.Liquid);
        }
        return TryFollow(temperatureK, pressurePa, z);

        static void Put(PhaseBuffer phase, double[] x, double fraction, double density, Branch branch)
        {
            x.CopyTo(phase.X, 0);
            (phase.Fraction, phase.Density, phase.Branch) = (fraction, density, branch);
        }
    }

    /// <summary>As <see cref="FollowCaloric"/>, all phases kept, and made the answer.</summary>
    public bool TryFollowCaloric(double pressurePa, double target, bool enthalpy, double startK)
    {
        int count = _count;
        return FollowCaloric(pressurePa, target, enthalpy, startK) && _count == count && (_solved = Finish());
    }

    /// <summary>A copy of the phases where they stand.</summary>
    public FlashMark Mark()
    {
        var copies = new PhaseBuffer[_count];
        for (int j = 0; j < _count; j++) (copies[j] = new PhaseBuffer(_w.Count)).CopyFrom(_phases[j]);
        return new FlashMark(Temperature, Pressure, [.. _w.Z], copies);
    }

    /// <summary>Makes the phases of a mark the answer.</summary>
    public void Return(FlashMark mark)
    {
        _w.Set(mark.TemperatureK, mark.PressurePa, mark.Z);
        _count = mark.Phases.Length;
        for (int j = 0; j < _count; j++) _phases[j].CopyFrom(mark.Phases[j]);
        _solved = true;
    }

    /// <summary>True when the last solve left an answer for this composition.</summary>
    public bool Holds(ReadOnlySpan<double> z) => _solved && z.SequenceEqual(_w.Z);

    /// <summary>
    /// Moves the phases of the previous solve, whose composition it was as well, to a pressure and an enthalpy or entropy without a
    /// certificate. False when it does not settle at once; <see cref="Temperature"/> is where it stood.
    /// </summary>
    public bool FollowCaloric(double pressurePa, double target, bool enthalpy, double startK)
    {
        _w.Move(startK, pressurePa);
        _solved = false;
        return _caloric.Solve(_phases, ref _count, target, enthalpy);
    }

    /// <summary>
    /// The certificate for several phases that <see cref="FollowCaloric"/> found. False: there are more phases; one was added, from
    /// which the search may go on at the same enthalpy or entropy.
    /// </summary>
    public bool Certify()
    {
        (Rounds, _savedCount, Failure, _track) = (1, 0, "", true);
        Residual = PhaseSums.FugacityDifference(Phases, _w.Z);
        return !AddIncipient() && Certified() && (_solved = Finish());
    }

    /// <summary>Makes vapour and liquid of a pure substance the answer.</summary>
    public void SetPure(SaturationPoint point, double vapourFraction, ReadOnlySpan<double> z)
    {
        _w.Set(point.TemperatureK, point.PressurePa, z);
        (Residual, Rounds, Failure) = (0, 0, "");
        _count = 0;
        if (vapourFraction > 0) Add(Branch.Vapour, point.VapourDensity, vapourFraction);
        if (vapourFraction < 1) Add(Branch.Liquid, point.LiquidDensity, 1 - vapourFraction);

        void Add(Branch branch, double density, double fraction)
        {
            var phase = _phases[_count++];
            phase.X[0] = 1;
            (phase.Branch, phase.Density, phase.Fraction) = (branch, density, fraction);
            _w.Evaluate(phase, branch);
        }
    }

    private bool StartFromFeed()
    {
        _count = 1;
        var feed = _phases[0];
        _w.Z.CopyTo(feed.X, 0);
        feed.Fraction = 1;
        feed.Density = double.NaN;
        if (!_w.EvaluateBest(feed)) return Fail("no admissible density root for the overall composition");
        return true;
    }

    // The overall composition may have no density root at all while its parts do: light components from heavy ones first,
    // then, if those have none either, every component mostly by itself.
    private bool StartApart()
    {
        int n = _w.Count;
        for (int i = 0; i < n; i++)
        {
            double light = _w.WilsonK[i] > 1 ? 0.99 : 0.01;
            (_phases[0].X[i], _phases[1].X[i]) = (light * _w.Z[i], (1 - light) * _w.Z[i]);
        }
        if (Parts(2)) return true;
        int parts = Math.Min(n, FlashWorkspace.MaximumPhases);
        if (parts < 2) return false;
        for (int j = 0; j < parts; j++)
            for (int i = 0; i < n; i++) _phases[j].X[i] = _w.Z[i] * (i % parts == j ? 0.98 : 0.02 / (parts - 1));
        return Parts(parts) || Fail("no admissible density root for the overall composition, nor for its parts");
    }

    // amounts into fractions and compositions, each on its better density root
    private bool Parts(int count)
    {
        for (int j = 0; j < count; j++)
        {
            double sum = 0;
            foreach (double amount in _phases[j].X) sum += amount;
            if (!(sum > 0)) return false;
            for (int i = 0; i < _w.Count; i++) _phases[j].X[i] /= sum;
            _phases[j].Fraction = sum;
            _phases[j].Density = double.NaN;
            if (!_w.EvaluateBest(_phases[j])) return false;
        }
        _count = count;
        Failure = "";
        return true;
    }

    // splits until the certificate holds; every round lowers the Gibbs energy
    private bool Grow(bool balanced)
    {
        int lost = 0;
        for (Rounds = 1; Rounds <= 40; Rounds++)
        {
            if (_count == 1)
            {
                if (!StartFromFeed()) return false;
                if (!AddIncipient(lost > 2)) return Certified();
                balanced = true;
            }
            var outcome = _split.Solve(_phases, ref _count, Rounds == 1 && !balanced ? 0 : _stability.LeastDistance, balanced);
            Residual = _split.Residual;
            // a warm start that does not fit is given up: a cold one follows
            if (outcome == SplitOutcome.PhaseLost && !balanced) return Fail("the warm start lost a phase");
            if (outcome == SplitOutcome.PhaseLost)
            {
                if (-_stability.LeastDistance < Negligible) lost++;
                continue;
            }
            if (outcome == SplitOutcome.Failed && _savedCount > 0 && -_stability.LeastDistance < Negligible) return TakeBack();
            if (outcome == SplitOutcome.Failed)
                return Fail($"{_count} phases: fugacities still differ by {_split.Residual:0.0e+0} after {_split.Iterations} iterations");
            balanced = true;
            if (!AddIncipient(lost > 2)) return Certified();
        }
        return Fail("the number of phases did not settle");
    }

    // second derivative of the Gibbs energy with the amount of the new phase, as far as the phase it comes from resists
    private double Curvature(PhaseBuffer donor, PhaseBuffer incipient)
    {
        _w.Resume(donor);
        _w.Derivatives(donor);
        double sum = 0;
        for (int i = 0; i < _w.Count; i++)
        {
            double di = incipient.X[i] - donor.X[i];
            if (donor.X[i] > 0) sum += di * di / donor.X[i];
            for (int j = 0; j < _w.Count; j++) sum += donor.C[i * _w.Count + j] * di * (incipient.X[j] - donor.X[j]);
        }
        return Math.Max(sum, 1e-12);
    }

    // the state before the last phase was added
    private bool TakeBack()
    {
        _count = _savedCount;
        for (int j = 0; j < _count; j++) _phases[j].CopyFrom(_saved[j]);
        return true;
    }

    private bool Certified() => _unstable ? Fail($"more than {FlashWorkspace.MaximumPhases} phases would be needed") : true;

    // the certificate: false when stable (or when no more phases fit in); otherwise the incipient phase is added
    // after a phase so close to the plane was added and lost again a few times it is left out
    private bool AddIncipient(bool exhausted = false)
    {
        var reference = _phases[PhaseSums.Largest(Phases)];
        for (int i = 0; i < _w.Count; i++)
            _d[i] = reference.X[i] > 0 ? Math.Log(reference.X[i]) + reference.LnPhi[i] : double.NegativeInfinity;
        _unstable = _stability.IsUnstable(_d, Phases, _track);
        _track = false;
        if (exhausted && -_stability.LeastDistance < Negligible) _unstable = false;
        if (!_unstable || _count == FlashWorkspace.MaximumPhases) return false;
        Donate(_stability.Incipient);
        return true;
    }

    // Takes as much of the incipient phase out of all the others (each component in proportion to where it is) as still
    // lowers the Gibbs energy: with tm < 0 a small enough amount always does, so the split starts downhill of every
    // state met before.
    private void Donate(PhaseBuffer incipient)
    {
        for (int i = 0; i < _w.Count; i++) incipient.LnX[i] = Math.Log(incipient.X[i]);
        double before = PhaseSums.Gibbs(Phases), each = PhaseSums.Gibbs(incipient), available = 1;
        for (int i = 0; i < _w.Count; i++) if (incipient.X[i] > 0) available = Math.Min(available, _w.Z[i] / incipient.X[i]);
        _savedCount = _count;
        for (int j = 0; j < _count; j++) _saved[j].CopyFrom(_phases[j]);
        // a shallow instability may end next to where it starts, with a gain (its square) below rounding
        double depth = -_stability.LeastDistance, share = 0.5 * available;
        bool shallow = depth < 1e-5;
        if (shallow) share = Math.Min(share, depth / Curvature(_phases[PhaseSums.Largest(Phases)], incipient));
        for (int attempt = 0; attempt < 30; attempt++, share *= 0.3)
        {
            bool possible = true;
            for (int j = 0; j < _count && possible; j++)
            {
                PhaseBuffer old = _saved[j], now = _phases[j];
                double left = 0;
                for (int i = 0; i < _w.Count; i++)
                {
                    double amount = old.Fraction * old.X[i];
                    if (amount > 0) amount *= 1 - share * incipient.X[i] / _w.Z[i];
                    now.X[i] = amount;
                    left += amount;
                }
                for (int i = 0; i < _w.Count; i++) now.X[i] /= left;
                now.Fraction = left;
                possible = _w.Evaluate(now, old.Branch);
            }
            if (possible && (PhaseSums.Gibbs(Phases) + share * each < before || shallow && share <= depth)) break;
        }
        _phases[_count].CopyFrom(incipient);
        _phases[_count].Fraction = share;
        _count++;
    }

    private bool Finish()
    {
        PhaseNaming.Sort(_phases.AsSpan(0, _count));
        for (int i = 0; i < _w.Count; i++)
        {
            double sum = 0;
            for (int j = 0; j < _count; j++) sum += _phases[j].Fraction * _phases[j].X[i];
            if (!(Math.Abs(sum - _w.Z[i]) < 1e-9 * Math.Max(_w.Z[i], 1e-3))) return Fail($"the material balance of component {i + 1} does not close: {sum} for {_w.Z[i]}");
        }
        return true;
    }

    private bool Fail(string why)
    {
        Failure = why;
        return false;
    }

    /// <summary>The least tangent-plane distance the certificate saw (units of RT).</summary>
    public double LeastTangentPlaneDistance => _stability.LeastDistance;
}
