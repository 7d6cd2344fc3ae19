namespace Coldwright.Numerics.Integration;

/// <summary>How the derivatives of the state by the parameters are carried along.</summary>
public sealed record SensitivityOptions
{
    /// <summary>dy/dp at the start, one run of components after another for each parameter; empty for zero.</summary>
    public ReadOnlyMemory<double> Initial { get; init; }

    /// <summary>A change of each parameter that matters, in its unit; empty for its own size (1 for a parameter that is 0). Sets increments and tolerances.</summary>
    public ReadOnlyMemory<double> Scales { get; init; }

    /// <summary>
    /// True: every stage of every step is iterated, the derivative of the discrete solution itself. False: one evaluation of the
    /// right-hand side a step and parameter, fourth order; cheaper.
    /// </summary>
    public bool Collocated { get; init; }

    /// <summary>
    /// True: the first steps after a start interpolate through the nodes there are, at first and second order, instead of iterating the stages: for runs that start anew
    /// many times where nothing jumps.
    /// </summary>
    public bool PlainStart { get; init; }

    /// <summary>How many times the state's tolerance an iteration may leave, 1 to 1000: derivatives are seldom wanted as exactly as the state, and each iteration saved is an evaluation a step and parameter.</summary>
    public double Looseness { get; init; } = 1;

    /// <summary>True: the sensitivities steer the step as the state does. False: their error estimate is reported only.</summary>
    public bool ErrorControl { get; init; }

    internal double[] ScaleVector(ReadOnlySpan<double> parameters)
    {
        if (Scales.Length != 0 && Scales.Length != parameters.Length) throw new ArgumentException($"{Scales.Length} parameter scales for {parameters.Length} parameters");
        if (!(Looseness is >= 1 and <= 1000)) throw new ArgumentException($"looseness {Looseness} of the sensitivities lies outside 1 to 1000");
        var result = new double[parameters.Length];
        for (int k = 0; k < result.Length; k++)
        {
            result[k] = Scales.Length != 0 ? Scales.Span[k] : parameters[k] != 0 ? Math.Abs(parameters[k]) : 1;
            if (!(result[k] > 0 && double.IsFinite(result[k]))) throw new ArgumentException($"scale of parameter {k} is {result[k]}; it must be above 0");
        }
        return result;
    }
}
