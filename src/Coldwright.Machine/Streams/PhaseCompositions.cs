namespace Coldwright.Machine.Streams;

/// <summary>
/// Mole fractions of vapour and liquid along one isobar, linear in enthalpy between the nodes; where a phase is absent, those it
/// has where it appears. What a passage holds of each substance is worked out from them.
/// </summary>
internal sealed class PhaseCompositions
{
    private readonly double[] _h;
    private readonly int _count;

    /// <param name="nodes">Rising in enthalpy.</param>
    public PhaseCompositions(IReadOnlyList<StreamNode> nodes)
    {
        _h = [.. nodes.Select(n => n.MolarEnthalpy)];
        Vapour = Filled([.. nodes.Select(n => n.Vapour)], [.. nodes.Select(n => n.Liquid)]);
        Liquid = Filled([.. nodes.Select(n => n.Liquid)], [.. nodes.Select(n => n.Vapour)]);
        _count = Vapour.Length / _h.Length;
    }

    private PhaseCompositions(PhaseCompositions like, double[] enthalpies) => (_h, _count, Vapour, Liquid) = (enthalpies, like._count, [.. like.Vapour], [.. like.Liquid]);

    /// <summary>Mole fractions, node after node.</summary>
    public double[] Vapour { get; }
    /// <summary>Mole fractions, node after node.</summary>
    public double[] Liquid { get; }

    /// <summary>A copy whose values may be overwritten, on enthalpies of its own.</summary>
    public PhaseCompositions Like(double[] enthalpies) => new(this, enthalpies);

    /// <summary>Adds a weight times both compositions at an enthalpy (J/mol).</summary>
    public void Add(double h, double weight, Span<double> vapour, Span<double> liquid)
    {
        int low = 0, high = _h.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (_h[middle] <= h) low = middle; else high = middle;
        }
        double t = Math.Clamp((h - _h[low]) / (_h[high] - _h[low]), 0, 1), below = weight * (1 - t), above = weight * t;
        int a = low * _count, b = high * _count;
        for (int i = 0; i < vapour.Length; i++)
        {
            vapour[i] += below * Vapour[a + i] + above * Vapour[b + i];
            liquid[i] += below * Liquid[a + i] + above * Liquid[b + i];
        }
    }

    // nearest node that has the phase; where none has it, the other phase
    private static double[] Filled(double[]?[] phase, double[]?[] other)
    {
        var filled = new double[phase.Length][];
        bool never = Array.TrueForAll(phase, p => p is null);
        for (int i = 0; i < phase.Length; i++)
        {
            filled[i] = never ? other[i] ?? [] : phase[i]!;
            for (int d = 1; filled[i] is null; d++)
                filled[i] = (i - d >= 0 ? phase[i - d] : null) ?? (i + d < phase.Length ? phase[i + d] : null)!;
        }
        return [.. filled.SelectMany(f => f)];
    }
}
