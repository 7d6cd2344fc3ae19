using System.Globalization;
using Coldwright.Machine.Files;
using Coldwright.Machine.Files.Keys;
using Coldwright.Machine.Files.Tree;
using Coldwright.Quantities;

namespace Coldwright.Machine.Tests.Files;

/// <summary>Each key of <c>machine.yaml</c>, those of nested groups included: its example is taken, everything out of its limits is refused by name.</summary>
public sealed class EveryKeyRefusesBadValues
{
    public static TheoryData<string, string> Keys
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var (way, section) in AllKeys.Sections)
                foreach (var key in section.Keys.Where(k => k.Form is not PartsForm && k.Name != "kind")) data.Add(way, key.Name);
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void BadValues(string way, string key)
    {
        var section = AllKeys.Sections.First(s => s.Way == way).Section;
        foreach (var (text, expected) in Bad(section[key].Form))
        {
            var problems = Read(section, key, text);
            Assert.True(problems.Count > 0, $"{way}.{key} takes {text}");
            Assert.All(problems, p => Assert.True(p.Message.Contains(key, StringComparison.Ordinal), p.Message));
            Assert.True(problems.Any(p => p.Message.Contains(expected, StringComparison.OrdinalIgnoreCase)), $"{way}.{key}: {text}: '{expected}' is not in: {string.Join(" | ", problems)}");
        }
    }

    [Theory]
    [MemberData(nameof(Keys))]
    public void TheExampleIsTaken(string way, string key)
    {
        var section = AllKeys.Sections.First(s => s.Way == way).Section;
        Assert.EndsWith(".", section[key].Meaning, StringComparison.Ordinal);
        if (section[key].Form is QuantityForm quantity)
        {
            Assert.True(quantity.Kind.Minimum is not null && quantity.Kind.Maximum is not null, $"{way}.{key} has no limits");
            Assert.Empty(Read(section, key, quantity.Kind.Example));
        }
    }

    private static IEnumerable<(string Text, string Expected)> Bad(ValueForm form)
    {
        if (form is not (SectionForm or SectionListForm or NumberListForm or EfficiencyForm)) yield return ("[1]", "must be a single value");
        switch (form)
        {
            case QuantityForm { Kind: var kind }:
                yield return ("blue", "number");
                if (kind.Dimension != Dimension.None) yield return ("5", "unit");
                if (kind.Minimum is { } low) yield return (Si(kind, kind.AboveMinimum ? low : low - Step(low)), low <= 0 && kind.Scale != QuantityScale.Amount ? "" : kind.AboveMinimum ? "more than" : "least");
                if (kind.Maximum is { } high) yield return (Si(kind, high + Step(high)), "at most");
                break;
            case ChoiceForm choice: yield return ("purple", $"none of {choice.Choices[0]}"); break;
            case WholeNumberForm whole:
                yield return ($"{whole.Lowest - 1}", "whole number from");
                yield return ($"{whole.Highest + 1}", "whole number from");
                yield return ("2.5", "whole number from");
                if (whole.Step > 1) yield return ($"{whole.Lowest + 1}", "even");
                break;
            case NumberListForm list:
                yield return ("7", $"list of {list.Count} numbers");
                yield return ("[1, 2, 3]", $"{list.Count} numbers are expected; here are 3");
                yield return ($"[{string.Join(", ", Enumerable.Repeat("1", list.Count - 1))}, x]", $"number {list.Count}");
                yield return ($"[{string.Join(", ", Enumerable.Repeat("1", list.Count - 1))}, [2]]", "a number is expected");
                yield return ($"[{string.Join(", ", Enumerable.Repeat("1", list.Count - 1))}, 1e300]", "at most");
                break;
            case RefrigerantForm:
                yield return ("unobtainium", "unknown substance");
                yield return ("propane 0.6, isobutane 0.6", "sum to 1.2");
                break;
            case MaterialForm: yield return ("cheese", "no material"); break;
            case TubeForm: yield return ("big", "no tube size"); break;
            case BoxForm: yield return ("1 m", "three lengths"); break;
            case EfficiencyForm: yield return ("2", "at most 1"); break;
            case SectionForm: yield return ("7", "must be a group of keys"); break;
            case SectionListForm: yield return ("7", "must be a list"); break;
        }
    }

    private static double Step(double limit) => limit == 0 ? 1e-9 : Math.Abs(limit) * 1e-3;

    private static string Si(QuantityKind kind, double value) => kind.Scale switch
    {
        QuantityScale.Pressure or QuantityScale.AbsolutePressure => FormattableString.Invariant($"{value / 1e5:R} bara"),
        _ when kind.Dimension == Dimension.None => value.ToString("R", CultureInfo.InvariantCulture),
        _ => FormattableString.Invariant($"{value:R} {kind.SiUnit}"),
    };

    private static IReadOnlyList<FileProblem> Read(FileSection section, string key, string value)
    {
        // Only this key is asked for: what else the group needs is another test's matter.
        var alone = new FileSection(section.Title, [section[key] with { IsRequired = false }]);
        var problems = new ProblemList("machine.yaml");
        var map = Assert.IsType<MapNode>(FileTree.Read($"{key}: {value}\n", problems));
        var reader = new SectionReader(new ReadingContext(problems, [], _ => 0.03), map, alone, "the group");
        Take(reader, key, alone[key].Form);
        return problems.InFileOrder();
    }

    private static void Take(SectionReader r, string key, ValueForm form)
    {
        switch (form)
        {
            case QuantityForm: r.Quantity(key); break;
            case ChoiceForm: r.Choice(key); break;
            case WholeNumberForm: r.WholeNumber(key); break;
            case NumberListForm: r.Numbers(key); break;
            case RefrigerantForm: r.Refrigerant(key); break;
            case MaterialForm: r.Material(key); break;
            case TubeForm: r.Tube(key); break;
            case BoxForm: r.Box(key); break;
            case EfficiencyForm: r.Efficiencies(key); break;
            case MixtureForm: r.Mixture(key, false); break;
            case SectionForm: r.Section(key, "the group"); break;
            case SectionListForm: _ = r.Sections(key, "an item").ToArray(); break;
            default: r.Text(key); break;
        }
    }
}
