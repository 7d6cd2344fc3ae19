using System.Globalization;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Files.Keys;
using Coldwright.Machine.Files.Tree;
using Coldwright.Materials.Solids;
using Coldwright.Materials.Tubes;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files;

/// <summary>Reads the single values of a file: quantity, tube, material, mixture, efficiencies, box.</summary>
internal static class ValueText
{
    private static readonly QuantityKind _ratio = (QuantityKind.Number with { Name = "a pressure ratio", Example = "5" }).Between(1, 1000);
    private static readonly QuantityKind _efficiency = (QuantityKind.Fraction with { Name = "an efficiency", Example = "0.6" }).Above(0, 1);
    private static readonly QuantityKind _inside = QuantityKind.Length.Above(0, 20);

    /// <summary>A quantity in SI; NaN when it is wrong.</summary>
    public static double Quantity(ReadingContext context, ScalarNode node, QuantityKind kind, string key)
    {
        var text = node.Text;
        // "0.31 EUR per kWh" is as good as "0.31 per kWh" when the file's currency is EUR.
        if (context.Currency.Length > 0) text = text.Replace(" " + context.Currency + " ", " ", StringComparison.Ordinal).Replace(context.Currency + "/", "/", StringComparison.Ordinal);
        if (Quantities.Quantity.TryParse(text, kind, context.RoomPressurePa, out var value, out var problem)) return value;
        context.Problems.Add(node, $"{key}: {problem.Message}");
        return double.NaN;
    }

    /// <summary>A whole number; null when it is wrong.</summary>
    public static int? WholeNumber(ReadingContext context, ScalarNode node, WholeNumberForm form, string key)
    {
        if (int.TryParse(node.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
            && value >= form.Lowest && value <= form.Highest && (value - form.Lowest) % form.Step == 0) return value;
        context.Problems.Add(node, $"{key}: '{FileTree.Shorten(node.Text)}' is no {(form.Step == 2 ? "even " : "")}whole number from {form.Lowest} to {form.Highest}");
        return null;
    }

    /// <summary>A refrigerant as written; empty when a name is unknown or fractions do not fit.</summary>
    public static string Refrigerant(ReadingContext context, ScalarNode node, string key)
    {
        if (MixtureText.TryParse(node.Text, false, context.MolarMassKgPerMol, out _, out var problems, out _)) return node.Text;
        // A bare name is meant as a pure substance or blend: it is unknown, rather than without a fraction.
        if (!node.Text.AsSpan().ContainsAny(" ,;=:")) problems = [SubstanceNames.UnknownMessage(node.Text)];
        foreach (var problem in problems) context.Problems.Add(node, $"{key}: {problem}");
        return "";
    }

    /// <summary>A tube; null when it is wrong.</summary>
    public static Tube? Tube(ReadingContext context, ScalarNode node, string key)
    {
        var text = NumberText.Normalise(node.Text);
        if (text.Length <= 60 && TubeTable.TryFind(text, out var outside, out var wall)) return new Tube(text, outside, wall);
        context.Problems.Add(node, $"{key}: '{FileTree.Shorten(node.Text)}' is no tube size that is known; write '3/8 in ACR', '1 in type L' or outside diameter and wall, '6.35 x 0.8 mm'");
        return null;
    }

    /// <summary>A solid's name; empty when it is wrong.</summary>
    public static string Material(ReadingContext context, ScalarNode node, string key)
    {
        if (SolidLibrary.Default.TryFind(node.Text, out var material)) return material.Name;
        var names = SolidLibrary.Default.Materials.Select(m => m.Name).ToArray();
        var near = NearestWord.Find(node.Text, SolidLibrary.Default.Materials.SelectMany(m => m.Aliases.Prepend(m.Name)), 3);
        context.Problems.Add(node, $"{key}: no material is called '{FileTree.Shorten(node.Text)}'; " +
            (near.Count > 0 ? $"the nearest are {string.Join(", ", near)}" : $"known are {string.Join(", ", names)}"));
        return "";
    }

    /// <summary>A mixture; null when it is wrong.</summary>
    public static Composition? Mixture(ReadingContext context, ScalarNode node, bool byMass)
    {
        if (!MixtureText.TryParse(node.Text, byMass, context.MolarMassKgPerMol, out var composition, out var problems, out var notes))
        {
            foreach (var problem in problems) context.Problems.Add(node, $"mixture: {problem}");
            return null;
        }
        context.Notes.AddRange(notes.Select(n => $"{context.Problems.File}:{node.Line}: {n}"));
        return composition;
    }

    /// <summary>Efficiency against pressure ratio, ascending; empty when it is wrong.</summary>
    public static IReadOnlyList<(double Ratio, double Efficiency)> Efficiencies(ReadingContext context, FileNode node, string key)
    {
        switch (node)
        {
            case ScalarNode scalar:
                var single = Quantity(context, scalar, _efficiency, key);
                return double.IsNaN(single) ? [] : [(1, single)];
            case MapNode { Entries.Count: > 0 } map:
                var rows = new List<(double Ratio, double Efficiency)>();
                foreach (var (ratio, value) in map.Entries)
                {
                    if (value is ScalarNode efficiency) rows.Add((Quantity(context, ratio, _ratio, key), Quantity(context, efficiency, _efficiency, key)));
                    else context.Problems.Add(value, $"{key}: an efficiency is expected behind '{FileTree.Shorten(ratio.Text)}'; here is {value.What}");
                }
                rows.RemoveAll(r => double.IsNaN(r.Ratio) || double.IsNaN(r.Efficiency));
                rows.Sort((a, b) => a.Ratio.CompareTo(b.Ratio));
                for (int i = 1; i < rows.Count; i++)
                    if (rows[i].Ratio == rows[i - 1].Ratio) context.Problems.Add(map, $"{key}: the pressure ratio {rows[i].Ratio} is here twice");
                return rows;
            default:
                context.Problems.Add(node, $"{key}: one efficiency (0.55) or a group of them at pressure ratios ({{2: 0.60, 5: 0.58}}) is expected; here is {node.What}");
                return [];
        }
    }

    /// <summary>Three inside lengths, m, written <c>0.5 x 0.4 x 0.4 m</c>; NaN when wrong.</summary>
    public static (double LengthM, double WidthM, double HeightM) Box(ReadingContext context, ScalarNode node, string key)
    {
        var text = NumberText.Normalise(node.Text).Replace('×', 'x');
        var pieces = text.Split('x', StringSplitOptions.TrimEntries);
        if (pieces.Length != 3)
        {
            context.Problems.Add(node, $"{key}: three lengths are expected, written like 0.5 x 0.4 x 0.4 m; got '{FileTree.Shorten(node.Text)}'");
            return (double.NaN, double.NaN, double.NaN);
        }
        // The unit stands behind the last number and holds for those without one.
        var unit = NumberText.TryRead(pieces[2], out _, out var rest, out _) ? rest : "";
        return (Side(0), Side(1), Side(2));

        double Side(int i)
        {
            var bare = NumberText.TryRead(pieces[i], out _, out var own, out _) && own.Length == 0;
            return Quantity(context, node with { Text = bare ? $"{pieces[i]} {unit}" : pieces[i] }, _inside, key);
        }
    }
}
