namespace Coldwright.Numerics.Optimisation;

/// <summary>
/// Global search for the largest value of a function in the unit cube by differential evolution, strategy rand-to-best/1/bin with dithered weight
/// (R. Storn, K. Price, J. Global Optimization 11 (1997) 341). The same seed gives the same answer, on however many threads. A trial has only to beat
/// its parent, so the function is told the parent's value: below it, any value will do.
/// </summary>
public sealed class DifferentialEvolution
{
    private const double LeastWeight = 0.4, WeightSpan = 0.5, ToBest = 0.4;

    /// <summary>Members of the population, at least 6; 0: ten times the dimensions, but 24 to 80.</summary>
    public int Population { get; init; }
    /// <summary>Generations, 1 or more.</summary>
    public int Generations { get; init; } = 60;
    /// <summary>Share of a trial taken from the mutant, 0..1.</summary>
    public double Crossover { get; init; } = 0.85;
    /// <summary>The search ends when best and worst member differ by less than this share of the best, 0 or more.</summary>
    public double Spread { get; init; } = 1e-4;
    /// <summary>Evaluations at a time, 1 or more.</summary>
    public int Threads { get; init; } = 1;
    /// <summary>Seed.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Searches.</summary>
    /// <param name="dimensions">1 or more.</param>
    /// <param name="value">The function: place in the unit cube, value that must be passed to matter. Called from several threads when there are several.</param>
    /// <param name="starts">Places that the first population begins with; may be empty.</param>
    /// <param name="generation">Told after each generation: its number, the best value so far; may be null.</param>
    /// <param name="cancel">Ends the search; the best so far is the answer.</param>
    /// <exception cref="ArgumentException">A setting outside its range.</exception>
    public SearchResult Maximise(int dimensions, Func<double[], double, double> value, IReadOnlyList<double[]> starts, Action<int, double>? generation = null, CancellationToken cancel = default)
    {
        if (dimensions < 1) throw new ArgumentException($"dimensions: {dimensions}; 1 or more are expected", nameof(dimensions));
        int n = Population == 0 ? Math.Clamp(10 * dimensions, 24, 80) : Population;
        if (n < 6 || Generations < 1 || Threads < 1 || !(Crossover is >= 0 and <= 1) || !(Spread >= 0))
            throw new ArgumentException($"population {n} (6 or more), generations {Generations} (1 or more), threads {Threads} (1 or more), crossover {Crossover} (0 to 1), spread {Spread} (0 or more)");
        if (starts.Any(s => s.Length != dimensions)) throw new ArgumentException($"every start must have {dimensions} coordinates", nameof(starts));
        var random = new Random(Seed);
        var members = new double[n][];
        var values = new double[n];
        Array.Fill(values, double.NegativeInfinity);
        for (int i = 0; i < n; i++) members[i] = i < starts.Count ? (double[])starts[i].Clone() : Enumerable.Range(0, dimensions).Select(_ => random.NextDouble()).ToArray();
        int evaluations = 0, done = 0;
        bool stopped = false;
        void All(double[][] places, double[] found, double[] floors)
        {
            var options = new ParallelOptions { MaxDegreeOfParallelism = Threads };
            Parallel.For(0, n, options, (i, state) =>
            {
                if (cancel.IsCancellationRequested)
                {
                    stopped = true;
                    return;
                }
                found[i] = value(places[i], floors[i]);
                Interlocked.Increment(ref evaluations);
            });
        }

        All(members, values, [.. Enumerable.Repeat(double.NegativeInfinity, n)]);
        var trials = new double[n][];
        var scores = new double[n];
        for (; done < Generations && !stopped && !cancel.IsCancellationRequested; done++)
        {
            int best = Best(values);
            if (Math.Abs(values[best] - values.Min()) <= Spread * Math.Abs(values[best])) break;
            for (int i = 0; i < n; i++) trials[i] = Trial(random, members, i, best);
            Array.Fill(scores, double.NegativeInfinity);
            All(trials, scores, values);
            for (int i = 0; i < n; i++)
                if (scores[i] >= values[i]) (members[i], values[i]) = (trials[i], scores[i]);
            generation?.Invoke(done + 1, values.Max());
        }
        int top = Best(values);
        return new(members[top], values[top], evaluations, done, stopped || cancel.IsCancellationRequested, [.. members.Zip(values).OrderByDescending(p => p.Second)]);
    }

    private double[] Trial(Random random, double[][] members, int i, int best)
    {
        int n = members.Length, d = members[i].Length, a = Other(random, n, i, -1, -1), b = Other(random, n, i, a, -1), c = Other(random, n, i, a, b);
        double weight = LeastWeight + WeightSpan * random.NextDouble(), toBest = random.NextDouble() < 0.5 ? ToBest : 0;
        int kept = random.Next(d);
        var trial = (double[])members[i].Clone();
        for (int k = 0; k < d; k++)
            if (random.NextDouble() < Crossover || k == kept)
            {
                double v = members[a][k] + weight * (members[b][k] - members[c][k]) + toBest * (members[best][k] - members[a][k]);
                // outside the cube: half of the way back to where it came from
                trial[k] = v < 0 ? 0.5 * members[a][k] : v > 1 ? 0.5 * (1 + members[a][k]) : v;
            }
        return trial;
    }

    private static int Other(Random random, int n, int i, int a, int b)
    {
        int k;
        do k = random.Next(n);
        while (k == i || k == a || k == b);
        return k;
    }

    private static int Best(double[] values) => Array.IndexOf(values, values.Max());
}

/// <summary>What a search found.</summary>
/// <param name="Place">Best place, in the unit cube.</param>
/// <param name="Value">Its value.</param>
/// <param name="Evaluations">Times the function was asked.</param>
/// <param name="Generations">Generations made.</param>
/// <param name="Stopped">True when it was cancelled: the best so far is shown.</param>
/// <param name="Members">The last population, best first.</param>
public sealed record SearchResult(double[] Place, double Value, int Evaluations, int Generations, bool Stopped, IReadOnlyList<(double[] Place, double Value)> Members);
