using Coldwright.Machine.Flow;

namespace Coldwright.Simulation.Parts;

/// <summary>Source lines of correlations.</summary>
internal static class Correlations
{
    public static IEnumerable<string> Lines(params ReadOnlySpan<Correlation> used)
    {
        var lines = new List<string>(used.Length);
        foreach (var c in used) lines.Add(FormattableString.Invariant($"{c.Name}: {c.Source}; one standard deviation {100 * c.RelativeUncertainty:0} %"));
        return lines;
    }
}
