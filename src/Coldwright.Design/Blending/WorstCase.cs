namespace Coldwright.Design.Blending;

/// <summary>Merit of a mixture at its worst: with each gas off by the filling error, by one model or by both.</summary>
internal sealed class WorstCase(BlendRater cubic, BlendRater? reference, double error)
{
    private readonly ErrorOrder _cubicOrder = new(), _referenceOrder = new();

    /// <summary>The cubic model.</summary>
    public BlendRater CubicRater => cubic;
    /// <summary>The models asked.</summary>
    public IReadOnlyList<BlendRater> Raters => reference is null ? [cubic] : [cubic, reference];
    /// <summary>True when the reference model is asked too.</summary>
    public bool AsksBoth => reference is not null;

    /// <summary>By the cubic model.</summary>
    /// <param name="x">Mole fractions.</param>
    /// <param name="floor">A merit that must be passed to matter: below it the answer is cut short.</param>
    public double Cubic(double[] x, double floor) => Worst(cubic, _cubicOrder, x, floor, double.PositiveInfinity, all: true).Merit;

    /// <summary>By both; by the cubic one alone where there is no other.</summary>
    /// <param name="x">Mole fractions.</param>
    /// <param name="floor">As above.</param>
    public double Both(double[] x, double floor)
    {
        if (reference is null) return Cubic(x, floor);
        // what most likely ends the question comes first: one rating by each model, then the cheap model's rest
        double least = Worst(cubic, _cubicOrder, x, floor, double.PositiveInfinity, all: false).Merit;
        if (least >= floor) least = Worst(reference, _referenceOrder, x, floor, least, all: false).Merit;
        if (least >= floor) least = Worst(cubic, _cubicOrder, x, floor, least, all: true).Merit;
        return least < floor ? least : Worst(reference, _referenceOrder, x, floor, least, all: true).Merit;
    }

    /// <summary>Seldom more than by both, for a sixth of the work: the reference model is asked without error and with that which is worst by the cubic one.</summary>
    /// <param name="x">Mole fractions.</param>
    /// <param name="floor">As above.</param>
    public double Likely(double[] x, double floor)
    {
        var (least, at) = Worst(cubic, _cubicOrder, x, floor, double.PositiveInfinity, all: true);
        if (reference is null || least < floor) return least;
        least = Math.Min(least, reference.Of(x, floor).Merit);
        return least < floor || at == 0 ? least : Math.Min(least, reference.Of(Fractions.WithErrors(x, error)[at]!, floor).Merit);
    }

    private (double Merit, int At) Worst(BlendRater rater, ErrorOrder order, double[] x, double floor, double least, bool all)
    {
        var errors = Fractions.WithErrors(x, error);
        int at = 0;
        foreach (int i in order.Of(errors.Count, all))
        {
            if (errors[i] is not { } off) continue;
            double merit = rater.Of(off, floor).Merit;
            if (merit >= least) continue;
            (least, at) = (merit, i);
            if (least >= floor) continue;
            order.EndedBy(i);
            break;
        }
        return (least, at);
    }

    /// <summary>Errors in the order in which they are asked: the one that ended a question last comes first in the next.</summary>
    private sealed class ErrorOrder
    {
        private int[] _order = [];

        public int[] Of(int count, bool all)
        {
            lock (this)
            {
                if (_order.Length != count) _order = [.. Enumerable.Range(0, count)];
                return all ? [.. _order] : [_order[0]];
            }
        }

        public void EndedBy(int error)
        {
            lock (this) _order = [error, .. _order.Where(i => i != error)];
        }
    }
}
