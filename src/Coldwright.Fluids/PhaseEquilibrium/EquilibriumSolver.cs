using Coldwright.Fluids.EquationsOfState;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// Phase equilibrium at given temperature and pressure: feed stability, split, and a stability certificate of the
/// result; phases are added while the certificate fails and dropped when they vanish. One object per thread; nothing is
/// allocated after construction.
/// </summary>
internal sealed class EquilibriumSolver
{
    private readonly FlashWorkspace _w;
    private readonly TangentPlaneStability _stability;
    private readonly PhaseSplit _split;
    private readonly double[] _d, _composition;
    private readonly PhaseBuffer[] _phases;
    private int _count;

    public EquilibriumSolver(HelmholtzModel model)
    {
        Model = model;
        _w = new FlashWorkspace(model);
        _stability = new TangentPlaneStability(_w);
        _split = new PhaseSplit(_w);
        (_d, _composition) = (new double[model.Count], new double[model.Count]);
        _phases = Enumerable.Range(0, FlashWorkspace.MaximumPhases).Select(_ => new PhaseBuffer(model.Count)).ToArray();
    }

    public HelmholtzModel Model { get; }
    public PhaseEvaluation Evaluation => _w.Evaluation;
    public double Temperature => _w.Temperature;
    public double Pressure => _w.Pressure;
    public ReadOnlySpan<double> Z => _w.Z;

    /// <summary>Phases of the last solve, lightest first.</summary>
    public ReadOnlySpan<PhaseBuffer> Phases => _phases.AsSpan(0, _count);

    /// <summary>Largest difference of ln f between phases.</summary>
    public double Residual { get; private set; }

    /// <summary>Rounds of split and certificate.</summary>
    public int Rounds { get; private set; }

    /// <summary>Why the last solve failed; empty when it did not.</summary>
    public string Failure { get; private set; } = "";

    /// <summary>
    /// Solves. <paramref name="warm"/>: start from the phases of the previous solve (same components, nearby state);
    /// the certificate is the same.
    /// </summary>
    public bool Solve(double temperatureK, double pressurePa, ReadOnlySpan<double> z, bool warm = false)
    {
        _w.Set(temperatureK, pressurePa, z);
        Residual = 0;
        Rounds = 0;
        Failure = "";
        if (warm && _count >= 2 && Grow(false)) return Finish();
        Failure = "";
        if (!StartFromFeed()) return false;
        return (!AddIncipient() || Grow(true)) && Finish();
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

    // splits until the certificate holds
    private bool Grow(bool downhill)
    {
        for (Rounds = 1; Rounds <= 14; Rounds++)
        {
            if (_count == 1)
            {
                if (!StartFromFeed()) return false;
                if (!AddIncipient()) return true;
                downhill = true;
            }
            var outcome = _split.Solve(_phases, ref _count, Rounds == 1 && !downhill ? 0 : _stability.LeastDistance, downhill);
            Residual = _split.Residual;
            if (outcome == SplitOutcome.PhaseLost) continue;
            if (outcome == SplitOutcome.Failed)
                return Fail($"{_count} phases: fugacities still differ by {_split.Residual:0.0e+0} after {_split.Iterations} iterations");
            if (!AddIncipient()) return true;
        }
        return Fail("the number of phases did not settle");
    }

    // the certificate: false when stable; otherwise the incipient phase is added
    private bool AddIncipient()
    {
        var reference = _phases[0];
        for (int j = 1; j < _count; j++) if (_phases[j].Fraction > reference.Fraction) reference = _phases[j];
        for (int i = 0; i < _w.Count; i++)
            _d[i] = reference.X[i] > 0 ? Math.Log(reference.X[i]) + reference.LnPhi[i] : double.NegativeInfinity;
        if (!_stability.IsUnstable(_d, Phases)) return false;
        if (_count == FlashWorkspace.MaximumPhases) return false;
        // taken from the phase that can give most of it; small enough that the Gibbs energy is sure to fall
        var incipient = _stability.Incipient;
        int donor = 0;
        double most = 0;
        for (int j = 0; j < _count; j++)
        {
            double available = double.PositiveInfinity;
            for (int i = 0; i < _w.Count; i++)
                if (incipient.X[i] > 0) available = Math.Min(available, _phases[j].Fraction * _phases[j].X[i] / incipient.X[i]);
            if (available > most) (most, donor) = (available, j);
        }
        Donate(_phases[donor], incipient, most);
        return true;
    }

    // Takes as much of the incipient phase out of the donor as still lowers the Gibbs energy: with tm < 0 a small enough
    // amount always does, so the split starts downhill of every state met before.
    private void Donate(PhaseBuffer from, PhaseBuffer incipient, double available)
    {
        double before = from.Fraction * LocalGibbs(from), share = 0.5 * Math.Min(available, from.Fraction);
        from.X.CopyTo(_composition, 0);
        double fraction = from.Fraction;
        for (int attempt = 0; attempt < 25; attempt++, share *= 0.3)
        {
            double left = fraction - share;
            for (int i = 0; i < _w.Count; i++) from.X[i] = (fraction * _composition[i] - share * incipient.X[i]) / left;
            from.Fraction = left;
            if (_w.Evaluate(from, from.Branch) && left * LocalGibbs(from) + share * LocalGibbs(incipient) < before) break;
        }
        _phases[_count].CopyFrom(incipient);
        _phases[_count].Fraction = fraction - from.Fraction;
        _count++;
    }

    private static double LocalGibbs(PhaseBuffer phase)
    {
        double g = 0;
        for (int i = 0; i < phase.X.Length; i++) if (phase.X[i] > 0) g += phase.X[i] * (Math.Log(phase.X[i]) + phase.LnPhi[i]);
        return g;
    }

    private bool Finish()
    {
        // lightest first
        for (int a = 1; a < _count; a++)
            for (int b = a; b > 0 && _phases[b].Density < _phases[b - 1].Density; b--)
                (_phases[b], _phases[b - 1]) = (_phases[b - 1], _phases[b]);
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
