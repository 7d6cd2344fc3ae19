using Coldwright.Report.Batch;
using Coldwright.Report.Cooldown;
using Coldwright.Report.Envelopes;

namespace Coldwright.Report.Views;

/// <summary>Longer work as one piece of HTML each, without head, foot and findings, which the page that holds it has.</summary>
public static class WorkViews
{
    /// <summary>A cooldown or warm-up.</summary>
    /// <param name="report">What was followed.</param>
    public static string Cooldown(CooldownReport report) => PageBody.Of(CooldownPage.Write(report with { Findings = [] }));

    /// <summary>A batch.</summary>
    /// <param name="report">What was simulated.</param>
    public static string Batch(BatchReport report) => PageBody.Of(BatchPage.Write(report with { Findings = [] }));

    /// <summary>An envelope.</summary>
    /// <param name="report">The envelope.</param>
    public static string Envelope(EnvelopeReport report) => PageBody.Of(EnvelopePage.Write(report));
}
