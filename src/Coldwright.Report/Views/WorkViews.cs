using Coldwright.Report.Batch;
using Coldwright.Report.Blending;
using Coldwright.Report.Charging;
using Coldwright.Report.Cooldown;
using Coldwright.Report.Envelopes;
using Coldwright.Report.Sizing;

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

    /// <summary>The best mixture. Its findings stay: they are about that mixture and not about the one in the file.</summary>
    /// <param name="report">What was found.</param>
    public static string Blend(BlendReport report) => PageBody.WithLead(BlendPage.Write(report));

    /// <summary>A filling plan. Its findings stay: some are about the filling alone.</summary>
    /// <param name="report">The plan.</param>
    public static string Charge(ChargeReport report) => PageBody.WithLead(ChargePage.Write(report));

    /// <summary>Sizes of a part.</summary>
    /// <param name="report">The sizes.</param>
    public static string Size(SizeReport report) => PageBody.WithLead(SizePage.Write(report with { Findings = [] }));

    /// <summary>An envelope.</summary>
    /// <param name="report">The envelope.</param>
    public static string Envelope(EnvelopeReport report) => PageBody.Of(EnvelopePage.Write(report));
}
