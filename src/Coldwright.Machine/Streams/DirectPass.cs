using Coldwright.Fluids.PhaseEquilibrium;

namespace Coldwright.Machine.Streams;

/// <summary>What a pass over <see cref="DirectStates"/> found, so that the next one at nearly the same state begins there.</summary>
public sealed class DirectPass
{
    // how near an answer must lie to begin from its phases, and from its distance from the table: J/mol and ln of pressure
    private const double SeedEnthalpy = 60, SeedLn = 0.01, OffsetEnthalpy = 400, OffsetLn = 0.05;
    private const int Neighbours = 3;

    private readonly record struct Found(double H, double P, double OffsetK, PhaseSeed? Seed);

    private List<Found> _before = [], _now = [];

    /// <summary>Begins a pass.</summary>
    internal void Begin()
    {
        if (_now.Count > 0) (_before, _now) = (_now, []);
        _before.Sort((a, b) => a.H.CompareTo(b.H));
    }

    /// <summary>How far from the table an answer near an enthalpy (J/mol) and a pressure (Pa) lay, K, and its phases; 0 and null where none was near.</summary>
    internal (double OffsetK, PhaseSeed? Seed) Near(double h, double p)
    {
        int low = 0, high = _before.Count;
        while (low < high)
        {
            int middle = (low + high) >> 1;
            if (_before[middle].H < h) low = middle + 1; else high = middle;
        }
        Found? best = null;
        double least = double.PositiveInfinity;
        for (int i = Math.Max(0, low - Neighbours); i < Math.Min(_before.Count, low + Neighbours); i++)
        {
            double off = Math.Abs(_before[i].H - h) / SeedEnthalpy + Math.Abs(Math.Log(_before[i].P / p)) / SeedLn;
            if (off < least) (least, best) = (off, _before[i]);
        }
        if (best is not { } near) return (0, null);
        double apart = Math.Abs(near.H - h), ln = Math.Abs(Math.Log(near.P / p));
        return (apart < OffsetEnthalpy && ln < OffsetLn ? near.OffsetK : 0, apart < SeedEnthalpy && ln < SeedLn ? near.Seed : null);
    }

    /// <summary>Keeps the answer that a flash holds.</summary>
    internal void Keep(double h, double p, double offsetK, Flash flash, int count)
    {
        var seed = new PhaseSeed(count);
        _now.Add(new(h, p, offsetK, flash.TryRead(seed) ? seed : null));
    }

    /// <summary>A copy of its own.</summary>
    public DirectPass Copy() => new() { _now = [.. _now] };

    /// <summary>The distances from the table alone, for a pass at another state.</summary>
    public DirectPass Offsets() => new() { _now = [.. _now.Select(f => f with { Seed = null })] };
}
