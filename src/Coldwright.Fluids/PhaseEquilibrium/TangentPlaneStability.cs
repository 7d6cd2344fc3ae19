using Coldwright.Numerics.LinearAlgebra;

namespace Coldwright.Fluids.PhaseEquilibrium;

/// <summary>
/// Tangent-plane stability (Michelsen, Fluid Phase Equilib. 9 (1982) 1): minimises
/// tm(W) = 1 + sum W_i (ln W_i + ln phi_i(W) - d_i - 1) from starts near every pure component, from an ideal-gas and a
/// Wilson vapour, from a Wilson liquid and from halfway between the overall composition and every heavy component. The state with d_i = ln f_i is stable when no tm is negative.
/// </summary>
internal sealed class TangentPlaneStability
{
    /// <summary>A minimum below this (units of RT) is an instability.</summary>
    public const double Threshold = -1e-10;

    private const double NewtonReach = 0.01;

    // how far along the softest direction (in square roots of mole fractions) minima are looked for
    private static readonly double[] SaddleSteps = [-0.2, 0.2], SoftSteps = [-0.2, 0.2, -0.03, 0.03];

    // least pivot of the curvature below which a phase counts as close to a critical point
    private const double Soft = 0.05;

    // the same for a phase in whose neighbourhood there is room for another minimum, above which near it no stationary point can be
    // born unseen, and above which its basin is wide
    private const double Firm = 0.3, TrackFirm = 0.5, WideFirm = 0.7;
    private const double MergeNarrow = 1e-7, MergeWide = 3e-5, MergeFirm = 5e-4;

    // gradient over distance to the nearest phase; a firm phase's own basin has 0.6 or more
    private const double Flat = 0.2;
    // reduced density above which a trial is a liquid and nothing else
    private const double FirmLiquid = 1.8;
    // curvature below which a flat place may turn into a stationary point
    private const double Singular = 0.05;

    private static readonly double[] Blends = [0.4, 0.75];

    private readonly FlashWorkspace _w;
    private readonly PhaseBuffer _trial, _lowest;
    // one for each number of phases: where phases come and go, each keeps its own
    private readonly StabilityMemory[] _memories;
    private readonly StartPaths _paths;
    private StabilityMemory _memory;
    private bool _beganDense, _saddle;
    private double _merge, _softest;
    private readonly double[] _amount, _ln, _root, _gradient, _matrix, _best, _curvature, _direction, _vectors;

    /// <summary>Ways of the starts of a certificate.</summary>
    public StartPaths Paths => _paths;

    /// <summary>Composition of the phase that lowers the Gibbs energy most among those found.</summary>
    public PhaseBuffer Incipient { get; }

    /// <summary>The least tangent-plane distance of the last call, units of RT (0 when every start ended in a known phase).</summary>
    public double LeastDistance { get; private set; }

    public TangentPlaneStability(FlashWorkspace workspace)
    {
        _w = workspace;
        _memories = [.. Enumerable.Range(0, FlashWorkspace.MaximumPhases).Select(_ => new StabilityMemory(workspace.Count))];
        _memory = _memories[0];
        int n = workspace.Count;
        _paths = new StartPaths(n);
        (_trial, _lowest, Incipient) = (new PhaseBuffer(n), new PhaseBuffer(n), new PhaseBuffer(n));
        (_curvature, _direction, _vectors) = (new double[n * n], new double[n], new double[n * n]);
        _ln = new double[n];
        (_amount, _root, _gradient, _matrix, _best) = (new double[n], new double[n], new double[n], new double[n * n], new double[n]);
    }

    /// <summary>
    /// Looks for a composition below the tangent plane <paramref name="d"/>; true when one exists
    /// (<see cref="Incipient"/>). <paramref name="known"/>: phases already on the plane; starts that run into them stop.
    /// <paramref name="track"/>: near the last full certificate, follow the stationary points that it met instead of all starts.
    /// </summary>
    public bool IsUnstable(ReadOnlySpan<double> d, ReadOnlySpan<PhaseBuffer> known, bool track = false)
    {
        LeastDistance = 0;
        _memory = _memories[known.Length - 1];
        if (track && _memory.Reaches(_w.Temperature, _w.Pressure, _w.Z, known) && StayClear(d, known)) return false;
        LeastDistance = 0;
        _memory.Begin();
        _paths.Clear();
        if (Search(d, known)) return true;
        _memory.Keep(_w.Temperature, _w.Pressure, _w.Z, known.Length);
        return false;
    }

    // every phase firmly stable by itself, every remembered stationary point still there and clear of the plane
    private bool StayClear(ReadOnlySpan<double> d, ReadOnlySpan<PhaseBuffer> known)
    {
        (_merge, _softest) = (MergeWide, 1);
        foreach (var phase in known)
            if (!IntrinsicallyStable(phase) || _softest < TrackFirm) return false;
        for (int k = 0; k < _memory.Points; k++)
        {
            _memory.Amounts(k).CopyTo(_amount);
            if (!(Minimise(_memory.BranchOf(k), d, known, _memory.Density(k)) > StabilityMemory.Clear)) return false;
        }
        return true;
    }

    private bool Search(ReadOnlySpan<double> d, ReadOnlySpan<PhaseBuffer> known)
    {
        int n = _w.Count;
        // a start that comes this close to a known phase ends in it: its basin is wide when its curvature is
        (_merge, _softest) = (MergeWide, 1);
        foreach (var phase in known)
        {
            if (IntrinsicallyStable(phase)) continue;
            // a saddle, or nearly one (next to a critical point): a minimum lies along the softest direction
            bool saddle = _saddle;
            foreach (double size in saddle ? SaddleSteps : SoftSteps)
            {
                for (int i = 0; i < n; i++)
                {
                    double root = Math.Sqrt(phase.X[i]) * (1 + Math.Clamp(size * _direction[i] / Math.Max(Math.Sqrt(phase.X[i]), 1e-12), -0.5, 0.5));
                    _amount[i] = root * root;
                }
                double tm = Minimise(phase.Branch, d, saddle ? [] : known);
                if (tm < LeastDistance)
                {
                    LeastDistance = tm;
                    Incipient.CopyFrom(_trial);
                }
            }
            // a shallow saddle next to a known phase says nothing about minima elsewhere
            if (LeastDistance < -1e-4) return true;
        }
        if (_softest > WideFirm) _merge = MergeFirm;
        for (int start = 0; start < n + 3 + Blends.Length; start++)
        {
            if (start >= 3 && start < n + 3 && _w.Z[start - 3] == 0) continue;
            var branch = start < n + 3 ? Start(start, d) : Blend(Blends[start - n - 3], d, known);
            double tm = Minimise(branch, d, known);
            if (start >= 3 && start < n + 3 && !_beganDense && _w.Temperature < _w.Model.Substances[start - 3].TripleTemperatureK)
            {
                // far below its triple point it may have no liquid root with so much of the others in it: purer
                for (int i = 0; i < n; i++) _amount[i] = i == start - 3 ? 1 : 1e-8 * _w.Z[i];
                tm = Minimise(branch, d, known);
            }
            if (tm < LeastDistance)
            {
                LeastDistance = tm;
                Incipient.CopyFrom(_trial);
                // far below the plane: good enough to start a split from; the result is certified again
                if (tm < -1e-4) return true;
            }
        }
        if (Enriched(d, known)) return true;
        // with three phases or more another one may lie between any two of them
        if (known.Length >= 3 && LeastDistance >= -1e-4) BetweenKnown(d, known);
        return LeastDistance < Threshold;
    }

    // A second liquid need not be near a pure component: halfway from the overall composition to each heavy one.
    private bool Enriched(ReadOnlySpan<double> d, ReadOnlySpan<PhaseBuffer> known)
    {
        for (int a = 0; a < _w.Count; a++)
        {
            if (_w.Z[a] == 0 || _w.Z[a] > 0.7 || _w.WilsonK[a] > 0.3) continue;
            for (int i = 0; i < _w.Count; i++) _amount[i] = (i == a ? 0.45 : 0) + 0.55 * _w.Z[i];
            if (Found(d, known)) return true;
        }
        return false;
    }

    // Several liquids at once: one more may lie between two of them, or be mostly the main components of two of them.
    private void BetweenKnown(ReadOnlySpan<double> d, ReadOnlySpan<PhaseBuffer> known)
    {
        int n = _w.Count;
        for (int a = 0; a < known.Length; a++)
            for (int b = 0; b < a; b++)
            {
                for (int i = 0; i < n; i++) _amount[i] = 0.5 * (known[a].X[i] + known[b].X[i]);
                if (Found(d, known)) return;
            }
        for (int a = 0; a < known.Length; a++)
            for (int b = 0; b < known.Length; b++)
            {
                int first = Main(known[a]), second = Main(known[b]);
                if (first == second) continue;
                for (int i = 0; i < n; i++) _amount[i] = (i == first ? 0.84 : i == second ? 0.14 : 0) + 0.02 * _w.Z[i];
                if (Found(d, known)) return;
            }
    }

    private static int Main(PhaseBuffer phase)
    {
        int main = 0;
        for (int i = 1; i < phase.X.Length; i++) if (phase.X[i] > phase.X[main]) main = i;
        return main;
    }

    private bool Found(ReadOnlySpan<double> d, ReadOnlySpan<PhaseBuffer> known)
    {
        double tm = Minimise(Branch.Liquid, d, known);
        if (!(tm < LeastDistance)) return false;
        LeastDistance = tm;
        Incipient.CopyFrom(_trial);
        return tm < -1e-4;
    }

    // clearly positive curvature of the tangent-plane distance at the phase itself; otherwise _direction is set
    private bool IntrinsicallyStable(PhaseBuffer phase)
    {
        int n = _w.Count;
        _w.Resume(phase);
        _w.Derivatives(phase);
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++)
                _curvature[i * n + j] = (i == j ? 1 : 0) + Math.Sqrt(phase.X[i] * phase.X[j]) * (phase.C[i * n + j] + 1);
        _curvature.AsSpan().CopyTo(_matrix);
        _saddle = !Dense.TryCholesky(_matrix, n, 1e-9);
        if (!_saddle)
        {
            double least = 1;
            for (int i = 0; i < n; i++) least = Math.Min(least, _matrix[i * n + i] * _matrix[i * n + i]);
            _softest = Math.Min(_softest, least);
            if (least < Firm) _merge = MergeNarrow;
            if (least > Soft) return true;
        }
        else _merge = MergeNarrow;
        // power iteration on (bound - curvature) for the softest direction
        double bound = 0;
        for (int i = 0; i < n; i++)
        {
            double row = 0;
            for (int j = 0; j < n; j++) row += Math.Abs(_curvature[i * n + j]);
            bound = Math.Max(bound, row);
        }
        for (int i = 0; i < n; i++) _direction[i] = 1 + 0.37 * i;
        for (int iteration = 0; iteration < 60; iteration++)
        {
            double norm = 0;
            for (int i = 0; i < n; i++)
            {
                double v = bound * _direction[i];
                for (int j = 0; j < n; j++) v -= _curvature[i * n + j] * _direction[j];
                _best[i] = v;
                norm += v * v;
            }
            norm = Math.Sqrt(norm);
            for (int i = 0; i < n; i++) _direction[i] = _best[i] / norm;
        }
        return false;
    }

    private Branch Start(int start, ReadOnlySpan<double> d)
    {
        int n = _w.Count;
        var z = _w.Z;
        switch (start)
        {
            case 0: // what an ideal gas would have at these fugacities
                for (int i = 0; i < n; i++) _amount[i] = z[i] == 0 ? 0 : Math.Exp(Math.Clamp(d[i], -600, 100));
                return Branch.Vapour;
            case 1:
                for (int i = 0; i < n; i++) _amount[i] = z[i] / _w.WilsonK[i];
                return Branch.Liquid;
            case 2:
                for (int i = 0; i < n; i++) _amount[i] = z[i] * _w.WilsonK[i];
                return Branch.Vapour;
            default:
                for (int i = 0; i < n; i++) _amount[i] = i == start - 3 ? 0.98 : 0.02 * z[i];
                return Branch.Liquid;
        }
    }

    // A light second liquid lies between the vapour and the heavy liquid, where no nearly pure component is liquid at all:
    // known lightest (or ideal-gas) and densest compositions mixed, on the liquid branch.
    private Branch Blend(double share, ReadOnlySpan<double> d, ReadOnlySpan<PhaseBuffer> known)
    {
        int n = _w.Count;
        PhaseBuffer light = known[0], dense = known[0];
        foreach (var phase in known)
        {
            if (phase.Density < light.Density) light = phase;
            if (phase.Density > dense.Density) dense = phase;
        }
        double sum = 0;
        for (int i = 0; i < n; i++) sum += _amount[i] = known.Length > 1 ? light.X[i] : _w.Z[i] == 0 ? 0 : Math.Exp(Math.Clamp(d[i], -600, 100));
        for (int i = 0; i < n; i++) _amount[i] = share * _amount[i] / sum + (1 - share) * dense.X[i];
        return Branch.Liquid;
    }

    // followedFrom: the density at a stationary point met near by, from which _amount was taken; NaN for a start
    private double Minimise(Branch branch, ReadOnlySpan<double> d, ReadOnlySpan<PhaseBuffer> known, double followedFrom = double.NaN)
    {
        int n = _w.Count;
        bool followed = !double.IsNaN(followedFrom);
        double sum0 = 0;
        for (int i = 0; i < n; i++) sum0 += _amount[i];
        if (!(sum0 > 0) || !double.IsFinite(sum0)) return 0;
        // the first composition of a start counts, not its amount
        for (int i = 0; i < n; i++)
        {
            if (!followed) _amount[i] /= sum0;
            _ln[i] = Math.Log(_amount[i]);
        }
        _trial.Density = followedFrom;
        _trial.Branch = branch;
        double previous = double.PositiveInfinity, tm = 0, lowest = -1e-4;
        int successive = followed ? 1 : 3;
        bool flat = false;
        double previousNorm = double.PositiveInfinity;
        _paths.Begin();
        for (int iteration = 0; iteration < 150; iteration++)
        {
            double sum = 0;
            for (int i = 0; i < n; i++) sum += _amount[i];
            if (!(sum > 1e-300) || !double.IsFinite(sum)) return 0;
            for (int i = 0; i < n; i++) _trial.X[i] = _amount[i] / sum;
            bool root = _w.Evaluate(_trial, branch, trial: true);
            if (iteration == 0) _beganDense = root && _trial.Density > _trial.DividingDensity;
            if (!root)
            {
                _memory.Spoil();
                return 0;
            }
            tm = 1;
            double norm = 0;
            for (int i = 0; i < n; i++)
            {
                if (_amount[i] <= 0) { _gradient[i] = 0; _root[i] = 0; continue; }
                double r = _ln[i] + _trial.LnPhi[i] - d[i];
                tm += _amount[i] * (r - 1);
                _root[i] = Math.Sqrt(_amount[i]);
                _gradient[i] = _root[i] * r;
                norm = Math.Max(norm, Math.Abs(_gradient[i]));
            }
            if (tm < lowest)
            {
                lowest = tm;
                _lowest.CopyFrom(_trial);
            }
            // the minimum lies below by the square of the gradient
            if (followed && norm < 1e-3) return tm;
            if (norm < 1e-8)
            {
                if (!followed) _memory.Add(_amount, _trial, branch);
                if (tm > 0) _paths.End(tm);
                return tm;
            }
            if (tm < -1e-4 && norm < 1e-2) return tm;
            foreach (var phase in known)
                if (_trial.Coincides(phase, _merge))
                {
                    if (flat) _memory.Spoil();
                    _paths.End(0);
                    return 0;
                }
            if (!followed && _paths.Meets(_trial, out double end)) return end;
            if (followed && iteration > 12) return 0;
            // A place far from every known phase where the start nearly stood still: a stationary point may be born there. On the pass
            // between two liquids a start nearly stands still as well; there the trial is dense and the curvature firm.
            if (flat && norm > previousNorm) _memory.Spoil();
            flat |= _memory.IsOpen && norm < Flat * Distance(known) && (_trial.Density < FirmLiquid * _trial.DividingDensity || NearlySingular(sum));
            previousNorm = norm;
            if (tm > previous + 1e-12 && successive <= 0) successive = 4;
            previous = tm;
            // Newton's method only close to a minimum: from afar it may leave the basin the start was chosen for
            if (successive-- > 0 || norm > NewtonReach || !NewtonStep(sum))
                for (int i = 0; i < n; i++)
                {
                    _ln[i] = Math.Clamp(d[i] - _trial.LnPhi[i], -690, 300);
                    _amount[i] = _w.Z[i] == 0 ? 0 : Math.Exp(_ln[i]);
                }
        }
        _memory.Spoil();
        // substitution may swing to and fro; every composition below the plane that it met is an instability
        if (!(lowest < -1e-4)) return tm;
        _trial.CopyFrom(_lowest);
        return lowest;
    }

    // from the trial amounts to the nearest known phase, in square roots
    private double Distance(ReadOnlySpan<PhaseBuffer> known)
    {
        double least = 4;
        foreach (var phase in known)
        {
            double sum = 0;
            for (int i = 0; i < _root.Length; i++)
            {
                double d = _root[i] - Math.Sqrt(phase.X[i]);
                sum += d * d;
            }
            least = Math.Min(least, sum);
        }
        return Math.Sqrt(least);
    }

    // some direction in which the curvature at the trial composition, which was evaluated last, is next to nothing: an eigenvalue on either side of nought
    private bool NearlySingular(double sum)
    {
        Curvature(sum);
        return Inertia.Below(_matrix, Singular, _vectors, _w.Count) > Inertia.Below(_matrix, -Singular, _vectors, _w.Count);
    }

    // second derivatives in alpha = 2 sqrt(W), in which the ideal part is the unit matrix; the lower triangle
    private void Curvature(double sum)
    {
        int n = _w.Count;
        _w.Derivatives(_trial);
        for (int i = 0; i < n; i++)
            for (int j = 0; j <= i; j++)
            {
                // W_j n dlnphi_i/dn_j/sum = C + 1 without the 1/x_i of ln x_i
                double b = _root[i] * _root[j] / sum * (_trial.C[i * n + j] + 1);
                if (i == j) b += 1 + (_root[i] > 0 ? 0.5 * _gradient[i] / _root[i] : 0);
                _matrix[i * n + j] = b;
            }
    }

    private bool NewtonStep(double sum)
    {
        int n = _w.Count;
        Curvature(sum);
        if (!Dense.TryCholesky(_matrix, n, 1e-10)) return false;
        for (int i = 0; i < n; i++) _best[i] = -_gradient[i];
        Dense.SolveCholesky(_matrix, _best, n);
        for (int i = 0; i < n; i++)
        {
            if (_root[i] == 0) continue;
            double next = Math.Clamp(_root[i] + 0.5 * _best[i], 0.3 * _root[i], 3 * _root[i]);
            _amount[i] = next * next;
            _ln[i] = 2 * Math.Log(next);
        }
        return true;
    }
}
