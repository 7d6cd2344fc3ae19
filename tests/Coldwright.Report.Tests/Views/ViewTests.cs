using Coldwright.Report.Rating;
using Coldwright.Report.Views;

namespace Coldwright.Report.Tests.Views;

/// <summary>The pieces of which the browser's page is made: what the reports say, without their heads and feet.</summary>
public class ViewTests
{
    public static TheoryData<int> Reports => [.. Enumerable.Range(0, FakeRating.All.Count())];

    private static RatingReport Report(int index) => FakeRating.All.ElementAt(index);

    [Theory]
    [MemberData(nameof(Reports))]
    public void PiecesHoldWhatTheReportSays(int index)
    {
        var report = Report(index);
        Assert.Contains(Markup.Escape(report.Readout(typographic: true).Say(report.Result.Main.LimitedBy.Sentence)), RatingView.Answer(report), StringComparison.Ordinal);
        Assert.Contains("<figure>", RatingView.Pictures(report), StringComparison.Ordinal);
        Assert.Contains("relative error", RatingView.Tables(report), StringComparison.Ordinal);
        Assert.Equal(report.Result.Main.Closed?.Sensitivity is null, RatingView.Sensitivities(report) == "");
        foreach (var piece in (string[])[RatingView.Answer(report), RatingView.Pictures(report), RatingView.Tables(report)])
        {
            Assert.DoesNotContain("<html", piece, StringComparison.Ordinal);
            Assert.DoesNotContain("<footer", piece, StringComparison.Ordinal);
            Assert.DoesNotContain("class=\"finding", piece, StringComparison.Ordinal);
        }
    }

    /// <summary>The page's zoom needs to know where a plot lies and what its edges stand for; both are told and make a whole.</summary>
    [Fact]
    public void EveryPlotTellsItsScales()
    {
        var pictures = RatingView.Pictures(FakeRating.Working);
        var plots = pictures.Split("data-plot=\"").Skip(1).ToArray();
        Assert.InRange(plots.Length, 4, 40);
        foreach (var plot in plots)
        {
            double[] Numbers(string text) => [.. text.Split(' ').Select(n => double.Parse(n, System.Globalization.CultureInfo.InvariantCulture))];
            Assert.Equal(4, Numbers(plot.Split('"')[0]).Length);
            foreach (var axis in (string[])["data-x=\"", "data-y=\""])
            {
                var ends = Numbers(plot.Split(axis)[1].Split('"')[0]);
                Assert.True(ends[0] < ends[1]);
            }
        }
    }

    [Fact]
    public void TwoCoolersAreComparedFigureByFigure()
    {
        var html = CompareView.Write(new("<one>", FakeRating.Working), new("two", FakeRating.TooWarm), [new("parts recuperator length", "16 m", null)]);
        Assert.Contains("&lt;one&gt;", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<one>", html, StringComparison.Ordinal);
        Assert.Contains("<td>parts recuperator length</td><td>16 m</td><td>not there</td>", html, StringComparison.Ordinal);
        // 97.26 K and 148.56 K: the second is 51.3 K warmer; 0.193 L/h and none.
        Assert.Contains("+51.3\u00a0K", html, StringComparison.Ordinal);
        Assert.Contains("\u22120.19 L/h", html, StringComparison.Ordinal);
        Assert.Contains("Nothing: both describe the same cooler.", CompareView.Write(new("a", FakeRating.Working), new("b", FakeRating.Working), []), StringComparison.Ordinal);
    }

    [Fact]
    public void FindingsAreCountedAndNamedInBrief()
    {
        var findings = FakeRating.Working.Findings;
        Assert.Equal((1, 1, 1), FindingsView.Count(findings));
        Assert.Equal(["vessel: trapped liquid", "charge: flammable charge", "capillary: cold surface"], FindingsView.Brief(findings));
        Assert.Contains("ISO 21013-3", FindingsView.Write(findings, UnitSystem.Si, 101325), StringComparison.Ordinal);
    }
}
