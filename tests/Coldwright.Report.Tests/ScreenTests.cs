using System.Text.RegularExpressions;
using Coldwright.Report.Rating;
using Coldwright.Report.Terminal;

namespace Coldwright.Report.Tests;

public class ScreenTests
{
    public static TheoryData<int> Reports => PictureTests.Reports;

    [Theory]
    [MemberData(nameof(Reports))]
    public void Fits_one_screen(int report)
    {
        var data = FakeRating.All.ElementAt(report);
        var lines = RatingText.Write(data, colour: false).TrimEnd('\n').Split('\n');
        var tables = Array.FindIndex(lines, l => l.StartsWith("What matters most", StringComparison.Ordinal));
        Assert.Equal(data.Result.Main.Closed?.Sensitivity is not null, tables >= 0);
        var count = tables >= 0 ? tables : lines.Length;
        Assert.True(count <= (data.Result.Main.Closed is null ? RatingText.MostLines : RatingText.MostClosedLines), $"{count} lines");
        Assert.All(lines, l => Assert.True(l.Length <= RatingText.Columns, $"{l.Length} columns: {l}"));
        Assert.StartsWith("Local codes and licensed practice come first", lines[^1]);
    }

    [Theory]
    [MemberData(nameof(Reports))]
    public void Colour_changes_nothing_but_colour(int report)
    {
        var data = FakeRating.All.ElementAt(report);
        Assert.Equal(RatingText.Write(data, colour: false), Regex.Replace(RatingText.Write(data, colour: true), "\e\\[[0-9;]*m", ""));
    }

    [Fact]
    public void Says_the_numbers_that_matter()
    {
        var text = RatingText.Write(FakeRating.Working, colour: false);
        foreach (var words in new[] { "97.3 K", "0.193 L/h", "6.30 kWh/L", "EUR 2.40/L", "1216 W", "DANGER   vessel", "SERIOUS  charge", "1 caution", "19.0 bar abs (18.0 bar gauge)" }) Assert.Contains(words, text);
        Assert.Contains("260.9 psig", RatingText.Write(FakeRating.Working with { Units = UnitSystem.Us }, colour: false));
        Assert.Contains("Limit broken: discharge temperature of compressor is 391.4 K", RatingText.Write(FakeRating.TooWarm, colour: false));
    }

    [Fact]
    public void A_long_list_says_how_much_was_left_out()
    {
        var text = RatingText.Write(FakeRating.Wordy, colour: false);
        Assert.Matches("and [0-9]+ more: see --report", text);
        Assert.Contains("8 more like these", text);
    }

    [Theory]
    [InlineData("leaves 21 W of cold", 10, new[] { "leaves", "21 W of", "cold" })]
    [InlineData("abcdefghijkl", 6, new[] { "abcde…" })]
    [InlineData("", 6, new string[0])]
    public void Wraps_at_blanks_and_keeps_units(string text, int width, string[] lines) => Assert.Equal(lines, Wrapping.Wrap(text, width));
}
