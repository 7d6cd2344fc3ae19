using Coldwright.Machine.Files.Editing;
using Coldwright.Report.Views;

namespace Coldwright.Web.Answers;

/// <summary>Where two machine files differ, value by value.</summary>
internal static class Differences
{
    public static IReadOnlyList<FileDifference> Between(string first, string second)
    {
        var (a, b) = (Values(first), Values(second));
        return [.. a.Keys.Union(b.Keys).Select(p => new FileDifference(p.Replace('/', ' '), a.GetValueOrDefault(p), b.GetValueOrDefault(p))).Where(d => d.First != d.Second)];
    }

    // Keys that are left out are in the form with no value.
    private static Dictionary<string, string?> Values(string text) =>
        MachineForm.Of(text).SelectMany(s => s.Fields).Where(f => f.Value is not null).GroupBy(f => f.Place).ToDictionary(g => g.Key, g => g.First().Value);
}
