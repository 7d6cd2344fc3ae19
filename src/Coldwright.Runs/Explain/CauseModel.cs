using Coldwright.Machine.Description;

namespace Coldwright.Runs.Explain;

/// <summary>How a cause acts on the model of the machine, and how far it may be there without being a fault.</summary>
/// <param name="Id">Stable word.</param>
/// <param name="Name">In words.</param>
/// <param name="Strengths">Two strengths at which whole runs are made, rising; the curve through them and nothing is the cause's effect.</param>
/// <param name="Usual">Strength of a clear fault: scale of the half-normal prior of a machine that has it.</param>
/// <param name="Doubt">Strength (either way) within which the machine file and the correlations leave the machine even without a fault, one standard deviation.</param>
/// <param name="Unit">Unit of the figure shown; empty for a ratio.</param>
/// <param name="Shown">Figure shown, from the strength: a ratio to the machine file, or a loss.</param>
/// <param name="Factors">Factors of a course at a strength.</param>
/// <param name="Changed">The machine at a strength; null when factors do it.</param>
public sealed record CauseModel(string Id, string Name, (double First, double Second) Strengths, double Usual, double Doubt, string Unit, Func<double, double> Shown,
    Func<double, IReadOnlyDictionary<string, double>> Factors, Func<MachineDescription, double, MachineDescription>? Changed = null)
{
    /// <summary>True for a doubt that is no cause: it takes part in every fit and is never named.</summary>
    public bool OnlyDoubt { get; init; }

    /// <summary>True where the figures answer to it so straightly that a run at the second strength is enough.</summary>
    public bool IsStraight { get; init; }

    /// <summary>Share of the way down from which it is there, 0..1; null: from the start.</summary>
    public double? FromShare { get; init; }
}
