using System.Net;
using System.Text.RegularExpressions;
using Coldwright.Design.Blending;
using Coldwright.Report.Batch;
using Coldwright.Report.Blending;
using Coldwright.Report.Charging;
using Coldwright.Report.Cooldown;
using Coldwright.Report.Envelopes;
using Coldwright.Report.Parts;
using Coldwright.Report.Rating;
using Coldwright.Report.Runs;
using Coldwright.Report.Sizing;
using Coldwright.Report.Tests.Batch;
using Coldwright.Report.Tests.Design;
using Coldwright.Report.Tests.Parts;
using Coldwright.Report.Tests.Runs;
using Coldwright.Report.Views;

namespace Coldwright.Report.Tests;

/// <summary>
/// A reader of Fahrenheit and psi gets no sentence in kelvin and bar. What may stay: the kelvins beside a Fahrenheit (in brackets, or alone
/// in a cell, a column or a tile's note), the caloric zero, a logger's step in the log's own unit, and what a source is quoted with.
/// </summary>
public sealed partial class UsUnitsTests
{
    [GeneratedRegex(@"[0-9][\s\u00a0](K|bar|kPa|MPa|°C)\b(?!/)")]
    private static partial Regex Si();

    [GeneratedRegex(@"\([−-]?[0-9.]+[\s\u00a0]K\)|^[−-]?[0-9.]+[\s\u00a0]K, ±|[0-9.]+[\s\u00a0]°C, evenly spread|^[−-]?[0-9.]+[\s\u00a0]K$|°F[−-]?[0-9.]+[\s\u00a0]K$|  [-]?[0-9.]+ K|ideal gas at 300 K")]
    private static partial Regex Beside();

    [GeneratedRegex("<style.*?</style>|</(text|title|td|th|p|li|h1|h2|h3|dd|dt|figcaption|div|span|small)>|<br */?>", RegexOptions.Singleline)]
    private static partial Regex Ends();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    private static RatingReport Us(RatingReport report) => report with { Units = UnitSystem.Us };

    public static TheoryData<string> Pages => [.. Written.Keys];

    private static Dictionary<string, Func<string>> Written { get; } = new()
    {
        ["rating"] = () => RatingPage.Write(Us(FakeRating.Working)),
        ["rating, too warm"] = () => RatingPage.Write(Us(FakeRating.TooWarm)),
        ["rating, closed loop"] = () => RatingPage.Write(Us(FakeRating.Closed)),
        ["two side by side"] = () => CompareView.Write(new("one", Us(FakeRating.TooWarm)), new("two", Us(FakeRating.Working)), []),
        ["cooldown"] = () => CooldownPage.Write(CooldownReportTests.Report(units: UnitSystem.Us)),
        ["batch"] = () => BatchPage.Write(FakeBatch.Full with { Units = UnitSystem.Us }),
        ["blend"] = () => BlendPage.Write(FakeDesign.Blend(true, BlendGoal.Cooling, UnitSystem.Us)),
        ["charge"] = () => ChargePage.Write(FakeDesign.Charge(true, UnitSystem.Us)),
        ["size"] = () => SizePage.Write(FakeDesign.Size(true, UnitSystem.Us)),
        ["part"] = () => PartPage.Write(FakePart.Us),
        ["import"] = () => RunPage.Write(RunReportTests.Report(RunReportTests.Yaml, RunReportTests.Log(), UnitSystem.Us)),
        ["import, proof test"] = () => RunPage.Write(RunReportTests.Report(RunReportTests.Proof, "", UnitSystem.Us)),
        ["import, leak test"] = () => RunPage.Write(RunReportTests.Report(RunReportTests.Leak, "", UnitSystem.Us)),
        ["envelope"] = () => EnvelopePage.Write(EnvelopeTests.Report(us: true, two: false)),
    };

    [Theory]
    [MemberData(nameof(Pages))]
    public void NoSentenceOfAPageStaysInSi(string page) =>
        Assert.DoesNotContain(WebUtility.HtmlDecode(Tags().Replace(Ends().Replace(Written[page](), "\n"), "")).Split('\n'), Stays);

    public static TheoryData<string> Screens => [.. Printed.Keys];

    private static Dictionary<string, Func<string>> Printed { get; } = new()
    {
        ["rating"] = () => RatingText.Write(Us(FakeRating.Working), colour: false),
        ["rating, too warm"] = () => RatingText.Write(Us(FakeRating.TooWarm), colour: false),
        ["rating, closed loop"] = () => RatingText.Write(Us(FakeRating.Closed), colour: false),
        ["cooldown"] = () => CooldownText.Write(CooldownReportTests.Report(units: UnitSystem.Us), colour: false),
        ["batch"] = () => BatchText.Write(FakeBatch.Full with { Units = UnitSystem.Us }, colour: false),
        ["blend"] = () => BlendText.Write(FakeDesign.Blend(true, BlendGoal.Cooling, UnitSystem.Us), colour: false),
        ["charge"] = () => ChargeText.Write(FakeDesign.Charge(true, UnitSystem.Us), colour: false),
        ["size"] = () => SizeText.Write(FakeDesign.Size(true, UnitSystem.Us), colour: false),
        ["part"] = () => PartText.Write(FakePart.Us, colour: false),
        ["import"] = () => RunText.Write(RunReportTests.Report(RunReportTests.Yaml, RunReportTests.Log(), UnitSystem.Us), colour: false),
        ["import, proof test"] = () => RunText.Write(RunReportTests.Report(RunReportTests.Proof, "", UnitSystem.Us), colour: false),
        ["import, leak test"] = () => RunText.Write(RunReportTests.Report(RunReportTests.Leak, "", UnitSystem.Us), colour: false),
        ["envelope"] = () => EnvelopeText.Write(EnvelopeTests.Report(us: true, two: false), colour: false),
    };

    [Theory]
    [MemberData(nameof(Screens))]
    public void NoSentenceOfAScreenStaysInSi(string screen) => Assert.DoesNotContain(Printed[screen]().Split('\n'), Stays);

    [Fact]
    public void TheVerdictIsSaidInTheReadersUnits()
    {
        var readout = Us(FakeRating.TooWarm).Readout(typographic: false);
        Assert.StartsWith("It stops at -192.2 °F, 72.4 °F above where nitrogen condenses at 217", readout.Say(FakeRating.TooWarm.Result.Main.LimitedBy.Sentence), StringComparison.Ordinal);
        Assert.Contains("psig", readout.Say(FakeRating.TooWarm.Result.Main.LimitedBy.Sentence), StringComparison.Ordinal);
    }

    private static bool Stays(string text) => Si().IsMatch(Beside().Replace(text.Trim(), ""));
}
