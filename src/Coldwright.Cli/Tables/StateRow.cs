using System.Globalization;
using Coldwright.Cli.States;
using Coldwright.Fluids.Substances;
using Coldwright.Quantities;

namespace Coldwright.Cli.Tables;

/// <summary>One row of a table that was read and understood.</summary>
/// <param name="Line">Line in the file, from 1.</param>
/// <param name="Cells">The cells as written, in the order of the header.</param>
/// <param name="Mixture">The mixture.</param>
/// <param name="Known">The two known values.</param>
internal sealed record StateRow(int Line, IReadOnlyList<string> Cells, Composition Mixture, KnownPair Known)
{
    /// <summary>Reads a row; what is wrong goes to <paramref name="problems"/>, and then null is returned.</summary>
    public static StateRow? Read(int line, IReadOnlyList<string> header, IReadOnlyList<string> cells, bool byMass, List<string> problems)
    {
        var before = problems.Count;
        if (cells.Count != header.Count)
        {
            problems.Add($"line {line}: {cells.Count} cells, and the header has {header.Count} columns; a mixture with commas goes in quotes");
            return null;
        }
        var mixture = MixtureReading.Read(Cell(TableColumns.Mixture)!, byMass, out var wrong, out _);
        problems.AddRange(wrong.Select(w => $"line {line}: mixture: {w}"));
        var known = new KnownPair
        {
            TemperatureK = Number(TableColumns.Temperature, QuantityKind.Temperature),
            PressurePa = Number(TableColumns.Pressure, QuantityKind.Pressure),
            MolarEnthalpy = Number(TableColumns.Enthalpy, QuantityKind.MolarEnthalpy),
            MolarEntropy = Number(TableColumns.Entropy, QuantityKind.MolarEntropy),
            VapourFraction = Number(TableColumns.VapourFraction, QuantityKind.Fraction),
        };
        if (problems.Count == before && !known.IsSolvable)
            problems.Add($"line {line}: {known.Count} of {string.Join(", ", TableColumns.Known)} have a value; needed is {KnownPair.Pairs}");
        return problems.Count == before ? new StateRow(line, cells, mixture!, known) : null;

        string? Cell(string column)
        {
            for (var i = 0; i < header.Count; i++)
                if (header[i] == column) return cells[i];
            return null;
        }

        // The unit stands in the column's name; the limits are those of the same quantity on the command line.
        double? Number(string column, QuantityKind kind)
        {
            if (Cell(column) is not { Length: > 0 } text) return null;
            if (!double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _))
            {
                problems.Add($"line {line}: {column}: '{Faces.Shorten(text)}' is not a number");
                return null;
            }
            if (Quantity.TryParse(kind.SiUnit == "1" ? text : $"{text} {kind.SiUnit}", kind, StandardRoom.PressurePa, out var value, out var problem, plainPascalIsAbsolute: true)) return value;
            problems.Add($"line {line}: {column}: {problem.Message}");
            return null;
        }
    }
}
