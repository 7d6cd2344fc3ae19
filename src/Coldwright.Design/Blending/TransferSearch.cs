namespace Coldwright.Design.Blending;

/// <summary>
/// Local search among mole fractions: some of one gas is exchanged for another, in every pair, as long as something is gained; then by smaller steps.
/// Moves are judged in blocks and taken in their order, so that the number of threads changes nothing but the time.
/// </summary>
internal sealed class TransferSearch(Func<double[], double, double> merit, int threads, CancellationToken cancel)
{
    private const double FirstStep = 0.04;
    private const int Block = 4;

    /// <summary>True when it was ended early.</summary>
    public bool Stopped { get; private set; }

    /// <summary>From a mixture to the best near it.</summary>
    /// <param name="start">Mole fractions.</param>
    /// <param name="value">Their merit.</param>
    /// <param name="lastStep">Smallest step, mol/mol.</param>
    /// <param name="gases">Gases that may be used, by index; null: all.</param>
    /// <param name="firstStep">First step.</param>
    public (double[] X, double Merit) From(double[] start, double value, double lastStep, IReadOnlyList<int>? gases = null, double firstStep = FirstStep)
    {
        var all = gases ?? [.. Enumerable.Range(0, start.Length)];
        (double[] X, double Merit) best = (start, value);
        for (double step = firstStep; step >= lastStep * 0.999; step *= 0.5)
        {
            bool gained = true;
            for (int round = 0; gained && round < 12; round++)
            {
                gained = false;
                var moves = (from i in all from j in all where i != j && best.X[i] > 0 select Moved(best.X, i, j, step)).ToArray();
                for (int k = 0; k < moves.Length; k += Block)
                {
                    if (cancel.IsCancellationRequested)
                    {
                        Stopped = true;
                        return best;
                    }
                    var some = moves.Skip(k).Take(Block).ToArray();
                    var found = new double[some.Length];
                    double floor = best.Merit;
                    Parallel.For(0, some.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, i => found[i] = merit(some[i], floor));
                    int top = Array.IndexOf(found, found.Max());
                    if (found[top] <= best.Merit + 1e-9 * Math.Abs(best.Merit)) continue;
                    best = (some[top], found[top]);
                    gained = true;
                    // the rest of the moves began elsewhere: once more from here
                    break;
                }
            }
        }
        return best;
    }

    private static double[] Moved(double[] x, int from, int to, double step)
    {
        double by = Math.Min(step, x[from]);
        double[] moved = [.. x];
        moved[from] -= by;
        moved[to] += by;
        return Fractions.Clean(moved);
    }
}
