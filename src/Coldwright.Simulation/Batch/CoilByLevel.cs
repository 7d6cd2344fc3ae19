using Coldwright.Numerics.Interpolation;

namespace Coldwright.Simulation.Batch;

/// <summary>
/// How the level changes what the cold end takes. The rating stands for a vessel half full. Liquid covers turns that would condense, and a covered turn passes
/// less heat: at a level v the content must be warmer by Q (1/G(v) - 1/G(half)) for the same heat Q through the coil, with G its conductance.
/// </summary>
public sealed class CoilByLevel
{
    private const int Rounds = 60;

    private readonly MonotoneCubic _net, _gross, _resistance;

    /// <param name="net">Net cooling of the rating against its load temperature, W over K.</param>
    /// <param name="gross">Gross cooling likewise: what passes the coil, W over K.</param>
    /// <param name="levels">Liquid over the vessel's volume, increasing, 0..1.</param>
    /// <param name="conductances">Of the coil at these levels, W/K, not increasing.</param>
    /// <param name="halfFull">The conductance that the rating stands for, W/K.</param>
    public CoilByLevel(MonotoneCubic net, MonotoneCubic gross, IReadOnlyList<double> levels, IReadOnlyList<double> conductances, double halfFull)
    {
        for (int i = 0; i < conductances.Count; i++)
            if (!(conductances[i] > 0) || i > 0 && conductances[i] > conductances[i - 1] * (1 + 1e-6))
                throw new ArgumentException(FormattableString.Invariant($"conductances must be above 0 W/K and not rise with the level; {conductances[i]} at level {levels[i]}"), nameof(conductances));
        (_net, _gross, Levels, Conductances) = (net, gross, levels, conductances);
        _resistance = new([.. levels], [.. conductances.Select(g => 1 / g - 1 / halfFull)], new bool[levels.Count]);
    }

    /// <summary>Liquid over the vessel's volume, 0..1.</summary>
    public IReadOnlyList<double> Levels { get; }
    /// <summary>Conductance of the coil at each level, W/K.</summary>
    public IReadOnlyList<double> Conductances { get; }

    /// <summary>Net cooling at a content's temperature (K) and level (liquid over the vessel's volume), W.</summary>
    public double NetW(double contentK, double level)
    {
        double r = _resistance.At(level);
        // the load temperature of the rating at which the loop takes what the coil then passes; heat rises with it, so there is one
        double at = contentK - r * _gross.At(contentK), f = Off(at), before = contentK, g = Off(before);
        for (int i = 0; i < Rounds && Math.Abs(f) > 1e-12 * contentK && f != g; i++)
        {
            double next = at - f * (at - before) / (f - g);
            (before, g) = (at, f);
            at = next;
            f = Off(at);
        }
        return _net.At(at);

        double Off(double t) => t + r * _gross.At(t) - contentK;
    }
}
