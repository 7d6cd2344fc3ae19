using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;

namespace Coldwright.Machine.Streams;

/// <summary>
/// A stream's properties by a flash of the model wherever they are asked for: what tables are held against. A table of the same composition only says where
/// to begin and which phases to expect; a pass made before at nearly the same state says so better. Where the table has a change of phases near by, where there are
/// more than vapour and one liquid, where the phases do not settle, and for a sample of the others the flash carries its certificate. Not thread-safe.
/// </summary>
public sealed class DirectStates
{
    // K within which a temperature is found by the slope from the flash made last: when only it is asked for, and when all properties are
    private const double ReachK = 0.02, NodeReachK = 2e-3;
    // nearer to a change of phases than this, K, the table is not believed
    private const double BorderK = 1;
    // J/mol from an answer of the same pass within which it is gone on from; between the two flashes of a slope
    private const double NearEnthalpy = 0.25, SlopeStep = 20;
    private const double AstrayK = 5e-3;
    private const int MostRounds = 4, Recent = 32, SampleEvery = 101;

    private readonly StreamNodeMaker _maker;
    private readonly Flash _flash, _isotherm;
    private readonly PhaseSeed _seed;
    private readonly Dictionary<(double H, double P), Answer> _answers = [];
    private readonly Answer?[] _recent = new Answer?[Recent];
    private StreamTable _guide = null!;
    private double[] _z = [];
    private DirectPass _pass = new();

    private sealed record Answer(double H, double P, double TemperatureK, double Slope, StreamNode? Node);

    /// <param name="model">Fluid model.</param>
    /// <param name="transport">Transport properties of the same substances.</param>
    public DirectStates(HelmholtzModel model, TransportModel transport)
    {
        (_flash, _isotherm, _seed) = (new Flash(model), new Flash(model), new PhaseSeed(model.Count));
        _maker = new StreamNodeMaker(_flash, transport, []);
    }

    /// <summary>States found so far by following phases.</summary>
    public long Followed { get; private set; }
    /// <summary>States found so far with a certificate.</summary>
    public long Certified { get; private set; }
    /// <summary>Followed states that their certificate, asked for in a sample, put elsewhere.</summary>
    public long Astray { get; private set; }

    /// <summary>Begins a pass: a stream that answers by flashes, until the next pass begins.</summary>
    /// <param name="guide">Table of what flows.</param>
    /// <param name="pass">What such a pass found before; brought up to date. New: nothing yet.</param>
    public StreamTable Begin(StreamTable guide, DirectPass pass)
    {
        (_guide, _pass) = (guide, pass);
        pass.Begin();
        _z = [.. guide.Composition];
        _answers.Clear();
        Array.Clear(_recent);
        return StreamTable.Direct(this, guide);
    }

    /// <summary>All properties, an absent phase with those of the other.</summary>
    internal StreamNode At(double h, double p) => _answers.TryGetValue((h, p), out var known) && known.Node is { } node ? node : Keep(Solve(h, p, NodeReachK, all: true)).Node!;

    /// <summary>K.</summary>
    internal double Temperature(double h, double p, out double slope)
    {
        if (!_answers.TryGetValue((h, p), out var answer)) answer = Keep(Near(h, p) ?? Solve(h, p, ReachK, all: false));
        slope = answer.Slope;
        return answer.TemperatureK;
    }

    /// <summary>dT/dh, K mol/J.</summary>
    internal double Slope(double h, double p)
    {
        double At(double enthalpy) => Solve(enthalpy, p, NodeReachK, all: false).TemperatureK;
        return Math.Max(0, (At(h + SlopeStep) - At(h - SlopeStep)) / (2 * SlopeStep));
    }

    /// <summary>J/mol at a temperature in K.</summary>
    internal double Enthalpy(double temperatureK, double p) => _isotherm.TrySolve(temperatureK, p, _z, warm: true) ? _isotherm.Enthalpy() : _isotherm.TemperaturePressure(temperatureK, p, _z).MolarEnthalpy;

    private Answer Keep(Answer answer)
    {
        Array.Copy(_recent, 0, _recent, 1, Recent - 1);
        return _recent[0] = _answers[(answer.H, answer.P)] = answer;
    }

    private Answer? Near(double h, double p)
    {
        foreach (var a in _recent)
            if (a is not null && a.P == p && Math.Abs(h - a.H) < NearEnthalpy) return a with { H = h, TemperatureK = a.TemperatureK + a.Slope * (h - a.H), Node = null };
        return null;
    }

    private Answer Solve(double h, double p, double reachK, bool all)
    {
        var (guideK, slope, phases, borderK) = _guide.Surroundings(h, p);
        var (offsetK, seed) = _pass.Near(h, p);
        StreamNode? node = null;
        double k = guideK + offsetK;
        if (!(borderK > BorderK) || !Follow(seed ?? Seed(h, p, phases!), h, p, phases!, ref k, slope, reachK)) k = Certify(h, p, guideK, all, ref node);
        _pass.Keep(h, p, k - guideK, _flash, _z.Length);
        if (all) node ??= Filled(_maker.Of(_flash.State()), k);
        return new Answer(h, p, k, slope, node);
    }

    // by the table
    private PhaseSeed Seed(double h, double p, string phases)
    {
        _seed.VapourFraction = phases == "vapour" ? 1 : 0;
        if (phases != "vapour+liquid") return _seed;
        var point = _guide.At(h, p);
        _guide.Compositions(h, p, _seed.Vapour, _seed.Liquid);
        double vapour = point.VapourFraction, quality = point.Quality;
        _seed.VapourFraction = vapour;
        (_seed.VapourDensity, _seed.LiquidDensity) = (point.Vapour.Density * vapour / (quality * point.MolarMass), point.Liquid.Density * (1 - vapour) / ((1 - quality) * point.MolarMass));
        return _seed;
    }

    // false where the phases do not settle, or are others than expected
    private bool Follow(PhaseSeed seed, double h, double p, string phases, ref double k, double slope, double reachK)
    {
        if (phases is not ("vapour" or "liquid" or "vapour+liquid")) return false;
        for (int round = 0; round < MostRounds; round++)
        {
            bool settled = round == 0 ? _flash.TryFollowFrom(seed, k, p, _z) : _flash.TryFollow(k, p, _z);
            if (!settled || _flash.PhaseNames() != phases) return false;
            double rest = (h - _flash.Enthalpy()) * slope;
            k += rest;
            if (!(Math.Abs(rest) < reachK)) continue;
            if (++Followed % SampleEvery != 0) return true;
            StreamNode? none = null;
            double certifiedK = Certify(h, p, k, false, ref none);
            if (Math.Abs(certifiedK - k) < AstrayK) return true;
            Astray++;
            return false;
        }
        return false;
    }

    // a state inside a step narrower than rounding comes with its node
    private double Certify(double h, double p, double guessK, bool all, ref StreamNode? node)
    {
        Certified++;
        if (_flash.TrySolvePressureEnthalpy(p, h, _z, guessK)) return _flash.TemperatureK;
        var state = _flash.PressureEnthalpy(p, h, _z, guessK);
        if (all) node = Filled(_maker.Of(state), state.TemperatureK);
        return state.TemperatureK;
    }

    private static StreamNode Filled(StreamNode node, double temperatureK)
    {
        double[] v = node.Values;
        v[StreamColumn.Temperature] = temperatureK;
        if (node.Vapour is not null && node.Liquid is not null) return node;
        int from = node.Vapour is null ? StreamColumn.LiquidDensity : StreamColumn.VapourDensity, to = node.Vapour is null ? StreamColumn.VapourDensity : StreamColumn.LiquidDensity;
        for (int i = 0; i < 4; i++) v[to + i] = v[from + i];
        (v[StreamColumn.SurfaceTension], v[StreamColumn.PhaseEnthalpyDifference]) = (0, 0);
        return node;
    }
}
