namespace Coldwright.Runs.Explain;

/// <summary>A log and the model in the same figures: measured, expected, what each cause would change, and what nobody can know better.</summary>
internal sealed record Comparison
{
    /// <summary>Figures compared.</summary>
    public required IReadOnlyList<Feature> Features { get; init; }
    /// <summary>Measured.</summary>
    public required double[] Measured { get; init; }
    /// <summary>Of the machine as described.</summary>
    public required double[] Expected { get; init; }
    /// <summary>Variance of each figure by itself.</summary>
    public required double[] Variance { get; init; }
    /// <summary>Shifts that several figures share, each for one standard deviation, with a name.</summary>
    public required IReadOnlyList<(string Name, double[] Shift)> Shared { get; init; }
    /// <summary>The machine as described.</summary>
    public required Simulation.Cooldown.Course Plain { get; init; }
    /// <summary>Model of the batch; null without one.</summary>
    public BatchModel? Batch { get; init; }
    /// <summary>What may be wrong.</summary>
    public required IReadOnlyList<Suspect> Suspects { get; init; }
}

/// <summary>Something that may be wrong, as changes of the figures.</summary>
/// <param name="Id">Cause id.</param>
/// <param name="Detail">Which of several (a channel); empty for one alone.</param>
/// <param name="Model">How it acts on the loop; null for a sensor.</param>
/// <param name="First">Change at its first strength.</param>
/// <param name="Second">Change at its second strength.</param>
/// <param name="Strengths">The two strengths.</param>
/// <param name="Usual">Scale of its prior.</param>
/// <param name="TwoSided">True when it may go either way.</param>
internal sealed record Suspect(string Id, string Detail, CauseModel? Model, double[] First, double[] Second, (double First, double Second) Strengths, double Usual, bool TwoSided)
{
    /// <summary>Share of the odds of its cause, where several suspects stand for one (a sensor among many).</summary>
    public double OddsShare { get; init; } = 1;

    /// <summary>Strength below which its curve would do the opposite of what it does beyond; 0 for most.</summary>
    public double Least { get; init; }

    /// <summary>Weights of the two changes at a strength: a parabola through nothing and both, its tangent beyond.</summary>
    public (double First, double Second) Weights(double f)
    {
        var (a, b) = Strengths;
        if (TwoSided) return (f / a, 0);
        if (f <= b) return (f * (b - f) / (a * (b - a)), f * (f - a) / (b * (b - a)));
        double d = f - b;
        return (-d * b / (a * (b - a)), 1 + d * (2 * b - a) / (b * (b - a)));
    }

    /// <summary>Slopes of the weights.</summary>
    public (double First, double Second) Slopes(double f)
    {
        var (a, b) = Strengths;
        if (TwoSided) return (1 / a, 0);
        double h = Math.Min(f, b);
        return ((b - 2 * h) / (a * (b - a)), (2 * h - a) / (b * (b - a)));
    }
}
