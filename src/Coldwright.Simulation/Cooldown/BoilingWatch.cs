using Coldwright.Machine.Streams;

namespace Coldwright.Simulation.Cooldown;

/// <summary>
/// Tells when tables have been moved too far along their slopes: once two changes of phases run into each other, the place where liquid begins to boil no longer goes over in
/// proportion to the distance, as it does while all is well. Not thread-safe.
/// </summary>
internal sealed class BoilingWatch
{
    /// <summary>Kelvins astray from which tables are to be made anew.</summary>
    public const double MostK = 0.5;

    private readonly StreamMover _mover;
    private readonly double[] _pressures;
    private readonly double?[] _middle;
    // by isobar, then by direction
    private readonly double[][] _slopes;

    /// <param name="mover">Tables of the high side.</param>
    public BoilingWatch(StreamMover mover)
    {
        int directions = mover.Middle.Composition.Count - 1;
        (_mover, _pressures) = (mover, [.. mover.Middle.PressuresPa]);
        double[] step = new double[directions];
        _middle = Boiling(step);
        _slopes = [.. _pressures.Select(_ => new double[directions])];
        for (int d = 0; d < directions; d++)
        {
            step[d] = StreamMover.NeighbourStep;
            double?[] there = Boiling(step);
            for (int i = 0; i < _slopes.Length; i++) _slopes[i][d] = (there[i] - _middle[i] ?? 0) / StreamMover.NeighbourStep;
            step[d] = 0;
        }
    }

    /// <summary>How far boiling lies from where its slopes put it, K; the tables are left at that composition.</summary>
    /// <param name="step">Composition less that in the middle, ln(z_i/z_1).</param>
    public double AstrayK(ReadOnlySpan<double> step)
    {
        double most = 0;
        double?[] moved = Boiling(step);
        for (int i = 0; i < moved.Length; i++)
        {
            if (moved[i] is not { } k || _middle[i] is not { } expected) continue;
            for (int d = 0; d < step.Length; d++) expected += step[d] * _slopes[i][d];
            most = Math.Max(most, Math.Abs(k - expected));
        }
        return most;
    }

    private double?[] Boiling(ReadOnlySpan<double> step)
    {
        var table = _mover.At(step);
        return Array.ConvertAll(_pressures, p => table.BoilingK(p));
    }
}
