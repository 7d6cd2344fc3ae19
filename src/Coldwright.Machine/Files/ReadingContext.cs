namespace Coldwright.Machine.Files;

/// <summary>What every reader of a file needs: where problems and notes go, and what values depend on.</summary>
/// <param name="Problems">Collects what is wrong.</param>
/// <param name="Notes">Collects what was done for the writer, such as fractions normalised.</param>
/// <param name="MolarMassKgPerMol">Molar mass (kg/mol) of a canonical substance name.</param>
public sealed record ReadingContext(ProblemList Problems, List<string> Notes, Func<string, double> MolarMassKgPerMol)
{
    /// <summary>Barometric pressure gauge readings are counted from, Pa absolute; the standard atmosphere until the room was read.</summary>
    public double RoomPressurePa { get; init; } = 101325;

    /// <summary>Molar mass of the charged mixture, kg/mol; NaN until it was read.</summary>
    public double MixtureKgPerMol { get; init; } = double.NaN;

    /// <summary>Currency word allowed inside prices; empty when there is none.</summary>
    public string Currency { get; init; } = "";
}
