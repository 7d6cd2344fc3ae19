using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Safety;

namespace Coldwright.Cli;

/// <summary>Safety findings in the terminal: part and rule, then what to do.</summary>
internal static class FindingsText
{
    private const int Columns = 88;
    private const int Margin = 10;

    /// <summary>The findings about a machine before it was rated.</summary>
    public static IReadOnlyList<Finding> For(MachineDescription machine) =>
        Cautions.For(machine, new CautionInputs { MolarMassKgPerMol = name => SubstanceCatalog.Get(name).MolarMass });

    /// <summary>Writes all of them, gravest first.</summary>
    public static void Write(TextWriter output, IReadOnlyList<Finding> findings)
    {
        foreach (var finding in findings)
        {
            var margin = finding.Grade.ToString().ToUpperInvariant().PadRight(Margin);
            var subject = finding.Part == "machine" ? "" : finding.Part + ": ";
            foreach (var line in Wrap($"{subject}{finding.Rule}. Do: {finding.Do}."))
            {
                output.WriteLine(margin + line);
                margin = new string(' ', Margin);
            }
        }
    }

    private static IEnumerable<string> Wrap(string text)
    {
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > Columns - Margin)
            {
                yield return line;
                line = word;
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }
        if (line.Length > 0) yield return line;
    }
}
