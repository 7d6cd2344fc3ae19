using System.Text.RegularExpressions;
using Coldwright.Report.Rating;

namespace Coldwright.Report.Tests;

public class PageTests
{
    public static TheoryData<int> Reports => PictureTests.Reports;

    [Theory]
    [MemberData(nameof(Reports))]
    public void Asks_nothing_from_outside(int report)
    {
        var page = RatingPage.Write(FakeRating.All.ElementAt(report));
        Assert.DoesNotContain("http", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch("""(src|href)\s*=|url\(|@import|<script|<link""", page);
        Assert.DoesNotContain("NaN", page);
        Assert.DoesNotContain("\r", page);
    }

    [Theory]
    [MemberData(nameof(Reports))]
    public void Every_element_is_closed(int report)
    {
        var page = RatingPage.Write(FakeRating.All.ElementAt(report));
        var open = new Stack<string>();
        foreach (Match tag in Regex.Matches(page, "<(/?)([a-zA-Z0-9]+)[^>]*?(/?)>"))
        {
            if (tag.Groups[2].Value is "meta" or "br" || tag.Groups[3].Value == "/") continue;
            if (tag.Groups[1].Value == "") open.Push(tag.Groups[2].Value);
            else Assert.Equal(open.Pop(), tag.Groups[2].Value);
        }
        Assert.Empty(open);
    }

    /// <summary>A cooler that is too warm makes no liquid, so nothing is said of the liquid that would leave its vessel.</summary>
    [Fact]
    public void NoLiquidHasNoTemperature()
    {
        Assert.Contains("liquid leaves the vessel at", RatingPage.Write(FakeRating.Working), StringComparison.Ordinal);
        string page = RatingPage.Write(FakeRating.TooWarm);
        Assert.DoesNotContain("liquid leaves the vessel at", page, StringComparison.Ordinal);
        Assert.Contains("nothing: the cold end is too warm", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Grave_findings_stand_before_the_pictures_and_the_standing_line_at_the_foot()
    {
        var page = RatingPage.Write(FakeRating.Working);
        Assert.True(page.IndexOf("finding stop", page.IndexOf("<main>", StringComparison.Ordinal), StringComparison.Ordinal) < page.IndexOf("<figure", StringComparison.Ordinal));
        Assert.Contains("Local codes and licensed practice come first", page[page.IndexOf("<footer", StringComparison.Ordinal)..]);
    }

    [Fact]
    public void Every_picture_has_its_caption_and_its_table()
    {
        var page = RatingPage.Write(FakeRating.Closed);
        var figures = Regex.Matches(page, "<figure.*?</figure>", RegexOptions.Singleline);
        Assert.Equal(8, figures.Count);
        Assert.All(figures, f => Assert.Matches("(?s)<figcaption>.{200,}</figcaption>.*<details>.*<table>", f.Value));
    }

    [Fact]
    public void A_result_with_nothing_to_draw_still_makes_a_page_and_a_screen()
    {
        var main = FakeRating.Block.Main with { CoolingCurve = [], Recuperator = [], IsothermalEnthalpyDifference = [], HeatLeakW = new Dictionary<string, double>(), Exergy = new(0, 0, 0, []) };
        var report = FakeRating.Block with { Result = FakeRating.Block.Result with { Main = main, SecondOpinion = main } };
        Assert.Contains("Where the watts go", RatingPage.Write(report));
        Assert.Contains("not computed", RatingText.Write(report, colour: false));
    }

    [Fact]
    public void What_a_person_typed_is_escaped()
    {
        var report = FakeRating.Working with { Machine = FakeRating.Working.Machine with { Name = "<b>\"5 & 6\"</b>" } };
        Assert.Contains("&lt;b&gt;&quot;5 &amp; 6&quot;&lt;/b&gt;", RatingPage.Write(report));
    }

    [Fact]
    public void Says_the_warnings_the_sources_and_the_caloric_zero()
    {
        var page = RatingPage.Write(FakeRating.Working);
        Assert.Contains("pair parameters estimated by a published scheme", page);
        Assert.Contains("J. Chem. Eng. Data 57 (2012) 3032", page);
        Assert.Contains("h = 0 and s = 0 for each component as ideal gas at 300 K", page);
    }
}
