using Coldwright.Fluids.Substances;

namespace Coldwright.Cli.States;

/// <summary>Reads a mixture from the command line or a table cell.</summary>
internal static class MixtureReading
{
    /// <summary>The mixture; null when something is wrong with it.</summary>
    /// <param name="text">As written.</param>
    /// <param name="byMass">True when the fractions are by mass.</param>
    /// <param name="problems">What is wrong.</param>
    /// <param name="notes">What was done for the writer.</param>
    public static Composition? Read(string text, bool byMass, out IReadOnlyList<string> problems, out IReadOnlyList<string> notes)
    {
        if (MixtureText.TryParse(text, byMass, name => SubstanceCatalog.Get(name).MolarMass, out var mixture, out problems, out notes)) return mixture;
        // A lone misspelt name is a pure substance meant: its nearest names help more than how to write a fraction.
        if (text.Trim().Length > 0 && text.AsSpan().IndexOfAny(",;=:") < 0 && !text.Contains(' ', StringComparison.Ordinal)) problems = [SubstanceNames.UnknownMessage(text.Trim())];
        return null;
    }
}
