using Coldwright.Report.Html;
using Coldwright.Simulation.Parts;

namespace Coldwright.Report.Parts;

/// <summary>The parts in the report of a whole cooler: each with its answer and its own first picture.</summary>
internal static class PartsOverview
{
    /// <param name="html">Page.</param>
    /// <param name="parts">Parts.</param>
    /// <param name="units">Units.</param>
    /// <param name="pressuresFollow">True when the page's own pressures are answers: the parts then stand at another point, that of the file's pressures.</param>
    public static void Write(HtmlText html, PartRatings parts, PartUnits units, bool pressuresFollow)
    {
        html.Section("Part by part", h =>
        {
            h.Element("p", (pressuresFollow
                ? "Each part by the model of its own, at the two pressures that the file gives and not at those found above: what it would do there. "
                : "Each part by the model of its own, at the operating point above: what it would do there, whether or not the figures given for the loop agree. ") + "More pictures, figures and sources: rate --part NAME.");
            foreach (var rating in parts.Ratings)
            {
                h.Element("h3", rating.Part == rating.Kind ? rating.Part : $"{rating.Part} ({rating.Kind})");
                h.Element("p", rating.Verdict);
                if (rating.Limits.Where(l => l.Broken).Select(l => l.What).ToArray() is { Length: > 0 } broken) h.Element("p", $"Limit broken: {string.Join(", ", broken)}.");
                if (rating.Pictures.Count > 0) PartPage.Draw(h, rating.Pictures[0], units);
            }
            if (parts.Left.Count > 0) h.Element("p", "Not rated alone:").List(parts.Left.Select(l => $"{l.Part}: {l.Why}"));
        });
    }
}
