namespace Coldwright.Numerics.Integration;

/// <summary>How accurately to integrate, and within what limits. Times are in the unit of the problem's t.</summary>
public sealed record IntegrationOptions
{
    /// <summary>Relative tolerance of every component, 1e-12 to 0.1.</summary>
    public double RelativeTolerance { get; init; } = 1e-6;

    /// <summary>
    /// Absolute tolerance, one for all components or one for each, in their units. The error allowed is the sum of both tolerances. The
    /// absolute over the relative one is taken as the smallest size of a component that matters, in differences too.
    /// </summary>
    public ReadOnlyMemory<double> AbsoluteTolerances { get; init; } = new double[] { 1e-9 };

    /// <summary>
    /// Components that are carried along but do not steer the step: integrals and balances. The iteration still converges them to
    /// their tolerance.
    /// </summary>
    public IReadOnlyList<int> WithoutErrorControl { get; init; } = [];

    /// <summary>
    /// True: the solution between the ends of a step is held to the tolerance as well, which events and observers need. False: the ends
    /// only; in stiff components that follow a forcing steps may then be much longer than the curve between them is known.
    /// </summary>
    public bool DenseOutputControl { get; init; } = true;

    /// <summary>First step after the start and after every restart; 0 to have it chosen.</summary>
    public double InitialStep { get; init; }

    /// <summary>Longest step.</summary>
    public double MaximumStep { get; init; } = double.PositiveInfinity;

    /// <summary>Attempted steps after which the run is given up.</summary>
    public int MaximumSteps { get; init; } = 100_000;

    /// <summary>Above 0: this step, without error control. For studies of the order of convergence.</summary>
    public double FixedStep { get; init; }

    /// <summary>Relative noise of the right-hand side: rounding by default, more when it holds an iteration of its own. Sets the increments of all differences (its square root).</summary>
    public double RelativeNoise { get; init; } = 1e-15;

    /// <summary>Points per step at which event functions are looked at; two crossings between neighbouring points go unseen.</summary>
    public int EventSamples { get; init; } = 8;

    /// <summary>What a given Jacobian costs, in evaluations of the right-hand side, 1 to 50: the dearer, the longer it is kept.</summary>
    public double JacobianCost { get; init; } = 3;

    /// <summary>Carry dy/dp along; null for none.</summary>
    public SensitivityOptions? Sensitivities { get; init; }

    internal double[] ToleranceVector(int count)
    {
        if (!(RelativeTolerance is >= 1e-12 and <= 0.1)) throw new ArgumentException($"relative tolerance {RelativeTolerance} lies outside 1e-12 to 0.1");
        if (AbsoluteTolerances.Length != 1 && AbsoluteTolerances.Length != count)
            throw new ArgumentException($"{AbsoluteTolerances.Length} absolute tolerances for {count} components; 1 or {count} expected");
        var result = new double[count];
        for (int i = 0; i < count; i++)
        {
            result[i] = AbsoluteTolerances.Span[AbsoluteTolerances.Length == 1 ? 0 : i];
            if (!(result[i] >= 1e-200 && double.IsFinite(result[i]))) throw new ArgumentException($"absolute tolerance of component {i} is {result[i]}; it must be 1e-200 or more");
        }
        return result;
    }

    internal bool[] Controlled(int count)
    {
        var result = new bool[count];
        Array.Fill(result, true);
        foreach (int i in WithoutErrorControl)
        {
            if ((uint)i >= count) throw new ArgumentException($"component {i} is to be without error control, but there are {count}");
            result[i] = false;
        }
        if (!Array.Exists(result, c => c)) throw new ArgumentException("at least one component must be under error control");
        return result;
    }

    internal void CheckLimits()
    {
        if (!(JacobianCost is >= 1 and <= 50)) throw new ArgumentException($"Jacobian cost {JacobianCost} lies outside 1 to 50 evaluations");
        if (!(InitialStep >= 0 && double.IsFinite(InitialStep))) throw new ArgumentException($"initial step {InitialStep}; 0 or a positive number expected");
        if (!(FixedStep >= 0 && double.IsFinite(FixedStep))) throw new ArgumentException($"fixed step {FixedStep}; 0 or a positive number expected");
        if (!(MaximumStep > 0)) throw new ArgumentException($"maximum step {MaximumStep}; it must be above 0");
        if (MaximumSteps < 1) throw new ArgumentException($"maximum number of steps {MaximumSteps}; 1 or more expected");
        if (EventSamples < 1) throw new ArgumentException($"{EventSamples} event samples a step; 1 or more expected");
        if (!(RelativeNoise is >= 1e-16 and <= 1e-2)) throw new ArgumentException($"relative noise {RelativeNoise} lies outside 1e-16 to 0.01");
    }
}
