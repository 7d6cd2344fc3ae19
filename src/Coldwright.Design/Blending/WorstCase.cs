namespace Coldwright.Design.Blending;

/// <summary>Merit of a mixture at its worst: with each gas off by the filling error, by one model or by both.</summary>
internal sealed class WorstCase(BlendRater cubic, BlendRater? reference, double error)
{
    // which error was worst last time: asked first, it ends most questions
    private int _worst;

    /// <summary>By the cubic model.</summary>
    public double Cubic(double[] x, double floor) => Worst(cubic, x, floor);

    /// <summary>By both; by the cubic one alone where there is no other.</summary>
    public double Both(double[] x, double floor)
    {
        double least = Worst(cubic, x, floor);
        return reference is null || least < floor ? least : Math.Min(least, Worst(reference, x, floor));
    }

    private double Worst(BlendRater rater, double[] x, double floor)
    {
        var all = Fractions.WithErrors(x, error).ToArray();
        int first = Math.Min(_worst, all.Length - 1);
        double least = double.PositiveInfinity;
        for (int k = 0; k < all.Length; k++)
        {
            int i = k == 0 ? first : k <= first ? k - 1 : k;
            double merit = rater.Of(all[i], floor).Merit;
            if (merit < least)
            {
                least = merit;
                _worst = i;
            }
            if (least < floor) return least;
        }
        return least;
    }
}
