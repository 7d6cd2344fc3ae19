using Coldwright.Numerics.Optimisation;

namespace Coldwright.Design.Blending;

/// <summary>
/// From all gases to the best robust mixture: evolution of the plain cubic merit, evolution of its worst case, evolution of the worst case of both models, and
/// steps between pairs of gases at the end. Each stage begins with what the one before and every set of gases met have to offer.
/// </summary>
internal sealed class RobustSearch
{
    private const double LastStep = 0.005, FinestStep = 0.0025, Apart = 0.04;
    // share of the generations that the worst case gets; members of its populations for each gas
    private const double WorstShare = 0.4;
    private const int WorstMembers = 3, BothMembers = 2, LeastMembers = 8, BothGenerations = 6, Finalists = 4;

    private readonly BlendRater _cubic;
    private readonly WorstCase _worst;
    private readonly BlendOptions _options;
    private readonly Action<string, double> _told;
    private readonly CancellationToken _cancel;
    private readonly Dictionary<string, (double[] X, double Merit)> _bestOf = new(StringComparer.Ordinal);

    /// <param name="cubic">Rates by the cubic model.</param>
    /// <param name="worst">Rates the worst case.</param>
    /// <param name="options">Goal, threads, generations.</param>
    /// <param name="told">Told what is being done and the best merit of that stage so far.</param>
    /// <param name="cancel">Ends it early.</param>
    public RobustSearch(BlendRater cubic, WorstCase worst, BlendOptions options, Action<string, double> told, CancellationToken cancel) =>
        (_cubic, _worst, _options, _told, _cancel) = (cubic, worst, options, told, cancel);

    /// <summary>True when it was ended early.</summary>
    public bool Stopped { get; private set; }

    /// <summary>The best mixture met of each set of gases, by the worst case of the cubic model, best first.</summary>
    public IEnumerable<double[]> BestOfEachSet => _bestOf.OrderByDescending(p => p.Value.Merit).ThenBy(p => p.Key, StringComparer.Ordinal).Select(p => p.Value.X);

    /// <summary>The best mixture and its merit at its worst.</summary>
    /// <param name="gases">How many gases.</param>
    /// <param name="now">Mole fractions to begin with; may be null.</param>
    public (double[] X, double Merit) From(int gases, double[]? now)
    {
        var starts = new List<double[]>();
        if (now is not null) starts.Add(now);
        starts.Add([.. Enumerable.Repeat(1.0 / gases, gases)]);
        int plainGenerations = Math.Max(1, (int)((1 - WorstShare) * _options.Generations)), worstGenerations = Math.Max(1, _options.Generations - plainGenerations);
        var plain = Evolved("seeking among all mixtures", gases, _options.Population, plainGenerations, starts, (x, floor) => _cubic.Of(x, floor).Merit);
        if (Stopped || plain.Members[0].Value <= BlendPoint.Unusable) return Best(plain);

        int members = Math.Max(LeastMembers, WorstMembers * gases);
        var good = Distinct(plain.Members.Where(m => m.Value > BlendPoint.Unusable).Select(m => Fractions.Of(m.Place))).Take(members).ToList();
        var worst = Evolved("making it safe against filling errors", gases, members, worstGenerations, good, Kept);
        if (Stopped || worst.Members[0].Value <= BlendPoint.Unusable || !_worst.AsksBoth) return Stopped ? Best(worst) : Polished(Fractions.Of(worst.Place));

        // the best of each set of gases too: where the models part, another set may be the better one
        members = Math.Max(LeastMembers, BothMembers * gases);
        var likely = Evolved("refining with the reference model", gases, members, BothGenerations, [.. Distinct(worst.Members.Take(members / 2).Select(m => Fractions.Of(m.Place)).Concat(BestOfEachSet)).Take(members)], _worst.Likely);
        if (Stopped) return Best(likely);
        _told("refining with the reference model, every error", likely.Value);
        (double[] X, double Merit) best = (Fractions.Of(likely.Place), double.NegativeInfinity);
        foreach (var x in Distinct(likely.Members.Select(m => Fractions.Of(m.Place))).Take(Finalists))
            if (_worst.Both(x, best.Merit) is var merit && merit > best.Merit) best = (x, merit);
        return Polished(best.X);
    }

    /// <summary>The best near a mixture by all models asked: linear steps, with the cubic model alone exchanges between pairs of gases after them.</summary>
    public (double[] X, double Merit) Polished(double[] from)
    {
        var steps = new LinearSteps(_worst.Raters, _options, _cancel);
        var found = steps.From(from, FinestStep);
        Stopped |= steps.Stopped;
        // the cubic model alone is cheap enough to be asked for the last thousandth
        if (_worst.AsksBoth || Stopped) return found;
        var search = new TransferSearch(_worst.Both, _options.Threads, _cancel);
        found = search.From(found.X, found.Merit, FinestStep, null, LastStep);
        Stopped |= search.Stopped;
        return found;
    }

    private SearchResult Evolved(string what, int gases, int population, int generations, IReadOnlyList<double[]> starts, Func<double[], double, double> merit)
    {
        var evolution = new DifferentialEvolution { Generations = generations, Population = population, Threads = _options.Threads, Seed = _options.Seed };
        var found = evolution.Maximise(gases, (u, floor) => merit(Fractions.Of(u), floor), [.. starts.Select(Fractions.Cube)], (g, value) => _told($"{what}, generation {g} of {generations}", value), _cancel);
        Stopped |= found.Stopped;
        return found;
    }

    // what passes its floor has been asked in full, so what is kept does not hang on the order of the threads
    private double Kept(double[] x, double floor)
    {
        double merit = _worst.Cubic(x, floor);
        if (merit < floor || merit <= BlendPoint.Unusable) return merit;
        string set = string.Join(';', Enumerable.Range(0, x.Length).Where(i => x[i] > 0));
        lock (_bestOf)
            if (!_bestOf.TryGetValue(set, out var old) || merit > old.Merit) _bestOf[set] = (x, merit);
        return merit;
    }

    private static (double[] X, double Merit) Best(SearchResult found) => (Fractions.Of(found.Place), found.Value);

    private static IEnumerable<double[]> Distinct(IEnumerable<double[]> members)
    {
        var kept = new List<double[]>();
        foreach (var x in members)
        {
            if (kept.Any(k => k.Zip(x, (a, b) => Math.Abs(a - b)).Max() < Apart)) continue;
            kept.Add(x);
            yield return x;
        }
    }
}
