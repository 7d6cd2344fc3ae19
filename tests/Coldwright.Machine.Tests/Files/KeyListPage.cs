using System.Globalization;
using System.Text;
using Coldwright.Machine.Files.Keys;
using Coldwright.Quantities;

namespace Coldwright.Machine.Tests.Files;

/// <summary>docs/how-to/machine-file.md: its tables are written from the key tables, so that the page cannot go stale.</summary>
public sealed class KeyListPage
{
    private const string Start = "<!-- the tables below are written by a test from the program's key tables; do not edit them -->";

    [Fact]
    public void TheTablesAreThoseOfTheProgram()
    {
        var path = Path.Combine(Examples.Root, "docs", "how-to", "machine-file.md");
        var page = File.ReadAllText(path);
        var at = page.IndexOf(Start, StringComparison.Ordinal);
        Assert.True(at >= 0, "the line that starts the tables is gone");
        var expected = page[..at] + Start + "\n" + Tables();
        // To write the page anew after a change of the key tables: COLDWRIGHT_WRITE_DOCS=1 ./test
        if (Environment.GetEnvironmentVariable("COLDWRIGHT_WRITE_DOCS") == "1") File.WriteAllText(path, page = expected);
        Assert.Equal(expected, page);
    }

    private static string Tables()
    {
        var text = new StringBuilder();
        Table(text, "The file", MachineKeys.Root);
        foreach (var (way, section) in AllKeys.Sections.Where(s => !PartKinds.Words.Contains(s.Way.Split('.')[0]))) Table(text, $"`{way}`", section);
        // A group that several parts share is printed once, and named where it is used.
        var printed = new HashSet<FileSection>(ReferenceEqualityComparer.Instance);
        foreach (var (way, section) in AllKeys.Sections.Where(s => PartKinds.Words.Contains(s.Way.Split('.')[0])))
        {
            var ways = AllKeys.Sections.Where(s => ReferenceEquals(s.Section, section)).Select(s => $"`{s.Way}`").ToArray();
            if (printed.Add(section)) Table(text, way.Contains('.', StringComparison.Ordinal) ? string.Join(", ", ways) : $"kind `{way}`", section);
        }
        return text.ToString();
    }

    private static void Table(StringBuilder text, string title, FileSection section)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n### {title}\n\n");
        foreach (var need in section.Needs) text.Append(CultureInfo.InvariantCulture, $"Needs {need.Text}.\n\n");
        var keys = section.Keys.Where(k => k.Name != "kind").ToArray();
        if (keys.Length == 0)
        {
            text.Append("No keys but `kind`.\n");
            return;
        }
        text.Append("| key | meaning | example | from … to |\n|---|---|---|---|\n");
        foreach (var key in keys)
            text.Append(CultureInfo.InvariantCulture, $"| `{key.Name}`{(key.IsRequired ? " (needed)" : "")} | {key.Meaning} | {Example(key.Form)} | {Limits(key.Form)} |\n");
    }

    private static string Example(ValueForm form) => form switch
    {
        QuantityForm quantity => $"`{quantity.Kind.Example}`",
        ChoiceForm choice => string.Join(", ", choice.Choices.Select(c => $"`{c}`")),
        WholeNumberForm whole => $"`{whole.Lowest}`",
        NumberListForm list => $"`[1.2, 3.4, …]`, {list.Count} numbers",
        RefrigerantForm => "`R290`, `R410A`",
        TubeForm => "`3/8 in ACR`, `6.35 x 0.8 mm`",
        MixtureForm => "`nitrogen 0.35, methane 0.65`",
        MaterialForm => "`polyurethane-foam`, `copper`",
        BoxForm => "`0.5 x 0.4 x 0.4 m`",
        EfficiencyForm => "`0.58`, `{2: 0.60, 5: 0.58}`",
        PortForm => "`recuperator.high`",
        SectionForm => "a group, see below",
        SectionListForm => "a list of groups, see below",
        PartsForm => "groups by your names, see below",
        _ => "any text",
    };

    private static string Limits(ValueForm form) => form switch
    {
        QuantityForm { Kind: { Minimum: { } low, Maximum: { } high } kind } => $"{(kind.AboveMinimum ? "above " : "")}{Si(kind, low)} … {Si(kind, high)}",
        WholeNumberForm whole => $"{whole.Lowest} … {whole.Highest}{(whole.Step == 2 ? ", even" : "")}",
        EfficiencyForm => "above 0 … 1",
        BoxForm => "above 0 m … 20 m each",
        _ => "",
    };

    private static string Si(QuantityKind kind, double value) => kind.Scale switch
    {
        QuantityScale.Pressure or QuantityScale.AbsolutePressure => FormattableString.Invariant($"{value / 1e5:0.#########} bara"),
        _ when kind.Dimension == Dimension.None => FormattableString.Invariant($"{value:0.#########}"),
        _ => FormattableString.Invariant($"{value:0.#########} {kind.SiUnit}"),
    };
}
