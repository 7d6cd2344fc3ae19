namespace Coldwright.Numerics.Integration;

/// <summary>M dy/dt = f(t, y, p) with a constant diagonal M. Immutable as far as its delegates are.</summary>
public sealed class InitialValueProblem
{
    private readonly double[] _mass = [], _parameters = [];

    /// <param name="count">Number of components, 1 or more.</param>
    /// <param name="slope">f.</param>
    public InitialValueProblem(int count, RightHandSide slope)
    {
        if (count < 1) throw new ArgumentOutOfRangeException(nameof(count), count, $"a problem has 1 or more components, got {count}");
        Count = count;
        Slope = slope;
        Pattern = JacobianPattern.Full(count);
    }

    /// <summary>Number of components.</summary>
    public int Count { get; }

    /// <summary>f.</summary>
    public RightHandSide Slope { get; }

    /// <summary>
    /// Diagonal of M; empty for the identity. A zero makes its row an algebraic equation 0 = f, which the initial state must satisfy
    /// and which must determine that component (index 1).
    /// </summary>
    public ReadOnlyMemory<double> MassDiagonal
    {
        get => _mass;
        init
        {
            if (value.Length != Count && value.Length != 0) throw new ArgumentException($"the mass diagonal has {value.Length} entries, the problem {Count} components");
            _mass = value.ToArray();
            for (int i = 0; i < _mass.Length; i++)
                if (!(_mass[i] >= 0 && double.IsFinite(_mass[i]))) throw new ArgumentException($"mass of component {i} is {_mass[i]}; 0 or a positive number expected");
        }
    }

    /// <summary>Nominal p; sensitivities are taken at this point.</summary>
    public ReadOnlyMemory<double> Parameters
    {
        get => _parameters;
        init
        {
            _parameters = value.ToArray();
            for (int i = 0; i < _parameters.Length; i++)
                if (!double.IsFinite(_parameters[i])) throw new ArgumentException($"parameter {i} is {_parameters[i]}; a finite number expected");
        }
    }

    /// <summary>Where df/dy may differ from zero. Rows left out are iterated without it (see docs/theory/integrator.md, balances).</summary>
    public JacobianPattern Pattern
    {
        get;
        init => field = value.Count == Count ? value : throw new ArgumentException($"the pattern is of {value.Count} components, the problem of {Count}");
    }

    /// <summary>df/dy, if it is known; else it is found by differences over the pattern.</summary>
    public JacobianFunction? Jacobian { get; init; }

    internal double[] Mass => _mass;

    internal double[] NominalParameters => _parameters;

    internal bool HasAlgebraicRows => Array.Exists(_mass, m => m == 0);
}
