using Coldwright.Numerics.Optimisation;

namespace Coldwright.Design.Blending;

/// <summary>
/// Local search for the best worst case: merit and limits of a mixture and of all its filling errors, by every model asked, are taken as linear near it. The best
/// mixture of that linear picture within a step is asked in earnest; where it is better the search goes on from there with a longer step, else with a shorter one.
/// It slides along limits and along the kinks where one error takes over from another, where a search by single exchanges stands still.
/// </summary>
internal sealed class LinearSteps(IReadOnlyList<BlendRater> raters, BlendOptions options, CancellationToken cancel)
{
    private const double FirstStep = 0.03, LongestStep = 0.08, Longer = 1.6, Shorter = 0.35, LeastSlopeStep = 0.004;
    // what the linear picture misses of a discharge (K) and of the logarithm of a freezing margin, per step
    private const double MissedK = 4, MissedLn = 1;
    private const int MostSteps = 40, Members = 32, Generations = 60;

    /// <summary>True when it was ended early.</summary>
    public bool Stopped { get; private set; }

    /// <summary>From a mixture to the best near it; the merit is that of the worst case.</summary>
    /// <param name="start">Mole fractions.</param>
    /// <param name="lastStep">Smallest step, mol/mol.</param>
    /// <param name="gases">Gases that may be used, by index; null: all.</param>
    public (double[] X, double Merit) From(double[] start, double lastStep, IReadOnlyList<int>? gases = null)
    {
        int[] free = [.. gases ?? [.. Enumerable.Range(0, start.Length)]];
        var at = Look(start, free, double.NegativeInfinity, null)!;
        double step = FirstStep;
        for (int k = 0; k < MostSteps && step >= lastStep; k++)
        {
            if (cancel.IsCancellationRequested)
            {
                Stopped = true;
                break;
            }
            var to = Best(at, free, step);
            var next = to.Zip(at.X, (a, b) => Math.Abs(a - b)).Max() < 0.2 * lastStep ? null : Look(to, free, at.Merit, options.Goal == BlendGoal.Lowest && at.Merit > BlendPoint.Unusable ? -at.Merit : null);
            if (next is null) step *= Shorter;
            else (at, step) = (next, Math.Min(LongestStep, Longer * step));
        }
        return (at.X, at.Merit);
    }

    // a mixture asked in earnest
    private sealed record Picture(double[] X, double Merit, IReadOnlyList<Line> Lines);

    // a merit or the room left to a limit, with its slope for each gas
    private sealed record Line(double Merit, double DischargeRoom, double FreezingRoom, double[] MeritSlope, double[] DischargeSlope, double[] FreezingSlope);

    private Picture? Look(double[] x, int[] free, double floor, double? nearK)
    {
        double error = options.FillingError, reach = Math.Max(error, LeastSlopeStep);
        var places = new List<(double[] X, bool Counts)> { (x, true) };
        var up = new int[x.Length];
        var down = new int[x.Length];
        foreach (int i in free)
        {
            // of a gas that is not in it a little is let in, for the slope alone
            double[]? more = x[i] > 0 ? Fractions.Off(x, i, reach) : [.. x.Select((v, k) => k == i ? reach : v * (1 - reach))], less = Fractions.Off(x, i, -reach);
            if (more is not null)
            {
                up[i] = places.Count;
                places.Add((more, error > 0 && x[i] > 0));
            }
            if (less is not null)
            {
                down[i] = places.Count;
                places.Add((less, error > 0));
            }
        }
        var points = new BlendPoint[raters.Count * places.Count];
        double worst = double.PositiveInfinity;
        Parallel.For(0, points.Length, new ParallelOptions { MaxDegreeOfParallelism = options.Threads }, (n, state) =>
        {
            var (place, counts) = places[n % places.Count];
            points[n] = raters[n / places.Count].Of(place, nearK: nearK);
            if (counts && points[n].Merit <= floor) state.Stop();
        });
        if (points.Any(p => p is null)) return null;
        var lines = new List<Line>();
        for (int m = 0; m < raters.Count; m++)
        {
            BlendPoint Of(int place) => points[m * places.Count + place];
            double[] Slope(Func<BlendPoint, double> figure) => [.. Enumerable.Range(0, x.Length).Select(i => up[i] + down[i] == 0 ? 0 : (figure(Of(up[i])) - figure(Of(down[i]))) / (reach * ((up[i] > 0 ? 1 : 0) + (down[i] > 0 ? 1 : 0))))];
            double[] merit = Slope(Merit), discharge = Slope(DischargeRoom), freezing = Slope(FreezingRoom);
            for (int k = 0; k < places.Count; k++)
            {
                if (!places[k].Counts) continue;
                var p = Of(k);
                worst = Math.Min(worst, p.Merit);
                lines.Add(new(Merit(p), DischargeRoom(p), FreezingRoom(p), merit, discharge, freezing));
            }
        }
        return worst > floor ? new(x, worst, lines) : null;
    }

    // where there is no answer nothing pulls anywhere
    private double Merit(BlendPoint p) => options.Goal switch
    {
        BlendGoal.Endless => Finite(p.DifferenceJPerMol),
        BlendGoal.Lowest => -(p.NoLoadK ?? 1000),
        _ => Finite(p.CoolingW),
    };

    private static double Finite(double v) => double.IsFinite(v) ? v : 0;

    private double DischargeRoom(BlendPoint p) => p.DischargeK is { } k ? raters[0].DischargeK - k : 1;

    private double FreezingRoom(BlendPoint p) => p.Freezing is { } f && options.Limits.FreezingMargin > 0 ? Math.Log(Math.Max(f.Margin, 1e-6) / options.Limits.FreezingMargin) : 1;

    // the best of the linear picture: it costs nothing to ask, so evolution asks it some thousand times
    private double[] Best(Picture at, int[] free, double step)
    {
        double[] Place(double[] cube)
        {
            double[] x = [.. at.X];
            for (int k = 0; k < free.Length; k++) x[free[k]] = Math.Max(0, x[free[k]] + step * (2 * cube[k] - 1));
            return Fractions.Clean(x);
        }
        double Value(double[] cube, double _)
        {
            var x = Place(cube);
            double before = raters[0].Over(x), least = double.PositiveInfinity, over = 0;
            double far = x.Zip(at.X, (a, b) => Math.Abs(a - b)).Max();
            foreach (var line in at.Lines)
            {
                double merit = line.Merit, hot = line.DischargeRoom - MissedK * step, ice = line.FreezingRoom - MissedLn * step;
                for (int i = 0; i < x.Length; i++)
                {
                    double d = (x[i] - at.X[i]) * (1 - at.X[i]);
                    merit += line.MeritSlope[i] * d;
                    hot += line.DischargeSlope[i] * d;
                    ice += line.FreezingSlope[i] * d;
                }
                least = Math.Min(least, merit);
                over = Math.Max(over, Math.Max(-hot / 100, -ice));
            }
            over = Math.Max(Math.Max(over, before), far > step ? far - step : 0);
            return over > 0 ? BlendPoint.Unusable * (1 + over) : least;
        }
        var found = new DifferentialEvolution { Generations = Generations, Population = Members, Seed = options.Seed, Spread = 1e-9 }.Maximise(free.Length, Value, [[.. free.Select(_ => 0.5)]]);
        return Place(found.Place);
    }
}
