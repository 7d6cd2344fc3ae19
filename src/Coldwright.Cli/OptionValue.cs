using Coldwright.Cli.States;
using Coldwright.Fluids.Substances;
using Coldwright.Quantities;

namespace Coldwright.Cli;

/// <summary>Reads the text of an option, or refuses it by the option's name.</summary>
internal static class OptionValue
{
    /// <summary>A quantity in SI.</summary>
    public static double Of(string option, string text, QuantityKind kind, double roomPa) =>
        Quantity.TryParse(text, kind, roomPa, out var value, out var problem) ? value : throw new InputException(option, problem.Message);

    /// <summary>A mixture by mole fractions.</summary>
    public static Composition Mixture(string option, string text, Terminal terminal)
    {
        var mixture = MixtureReading.Read(text, byMass: false, out var problems, out var notes) ?? throw new InputException(option, problems);
        foreach (var note in notes) terminal.Note(note);
        return mixture;
    }
}
