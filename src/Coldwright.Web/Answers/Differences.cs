using Coldwright.Machine.Files.Editing;
using Coldwright.Report.Views;

namespace Coldwright.Web.Answers;

/// <summary>Where two machine files differ, value by value.</summary>
internal static class Differences
{
    /// <summary>For a person to read.</summary>
    public static IReadOnlyList<FileDifference> Between(string first, string second) => [.. Places(first, second).Select(d => d with { Place = d.Place.Replace('/', ' ') })];

    /// <summary>By places, if single values that have a place are all that differs; null when lists or groups differ as well.</summary>
    public static IReadOnlyList<string>? AllOf(string first, string second)
    {
        var places = Places(first, second);
        try
        {
            var made = places.Aggregate(first, (text, d) => ValueEditor.Set(text, d.Place, d.Second));
            return Bare(made).SequenceEqual(Bare(second)) ? [.. places.Select(d => d.Place)] : null;
        }
        catch (ArgumentException)
        {
            // A place that cannot be set by itself is part of a group that differs.
            return null;
        }
    }

    private static IReadOnlyList<FileDifference> Places(string first, string second)
    {
        var (a, b) = (Values(first), Values(second));
        return [.. a.Keys.Union(b.Keys).Select(p => new FileDifference(p, a.GetValueOrDefault(p), b.GetValueOrDefault(p))).Where(d => d.First != d.Second)];
    }

    // Keys that are left out are in the form with no value.
    private static Dictionary<string, string?> Values(string text) =>
        MachineForm.Of(text).SelectMany(s => s.Fields).Where(f => f.Value is not null).GroupBy(f => f.Place).ToDictionary(g => g.Key, g => g.First().Value);

    // Without what a person may write as they like: comments, blank lines, blanks at the ends.
    private static IEnumerable<string> Bare(string text) =>
        text.Split('\n').Select(l => (l.IndexOf(" #", StringComparison.Ordinal) is >= 0 and var at ? l[..at] : l).Trim()).Where(l => l.Length > 0 && l[0] != '#');
}
