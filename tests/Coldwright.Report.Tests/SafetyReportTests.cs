using System.Text.RegularExpressions;
using Coldwright.Report.Safety;
using Coldwright.Safety;

namespace Coldwright.Report.Tests;

/// <summary>The forms of a safety review.</summary>
public class SafetyReportTests
{
    private static readonly Finding[] _findings =
    [
        new("trapped-liquid", Grade.Stop, "vessel <1>", 2929e5, 25e5, "Pa", "every space has a relief", "somebody, 2020", "it bursts", "put one on"),
        new("relief-too-small", Grade.Serious, "disc", 0.0011, 0.0024, "m", "wide enough", "somebody, 2020", "the pressure runs on", "fit a wider one") { AtLeast = true },
        new("flammable-cloud", Grade.Caution, "room", 0.0123, 0.01, "kg/m3", "less than a quarter", "somebody, 2020", "it burns", "ventilate"),
        new("stored-energy", Grade.Note, "high side", 61_600, null, "J", "gas holds this", "somebody, 1983", "pieces fly", "test with water"),
        new("evacuate-first", Grade.Note, "charge", null, 4800, "Pa", "drawn down first", "somebody, 2019", "air stays", "draw it down"),
        Cautions.LocalCodes,
    ];

    private static SafetyReport Of(params Finding[] findings) => new() { Machine = FakeRating.Working.Machine, Review = new(findings, ["one thing could not be worked out"]) };

    [Fact]
    public void Lines_fit_and_colour_changes_no_word()
    {
        var text = SafetyText.Write(Of(_findings), colour: false);
        Assert.All(text.Split('\n'), l => Assert.True(l.Length <= SafetyText.Columns, l));
        Assert.Equal(text, Regex.Replace(SafetyText.Write(Of(_findings), colour: true), "\e\\[[0-9;]*m", ""));
        Assert.StartsWith("DANGER   vessel <1>: trapped liquid, 2929 bar abs", text, StringComparison.Ordinal);
        foreach (var words in (string[])["1.10 mm, at least 2.40 mm needed", "12.3 g/m3, limit 10.0 g/m3", "stored energy, 61.6 kJ", "limit 48.0 mbar abs", "1 danger, 1 serious; 1 caution and 2 notes", "could not be worked out", "this list is no certificate"])
            Assert.Contains(words, text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_verdict_follows_the_gravest()
    {
        Assert.True(Of(_findings).HasGrave);
        Assert.Contains("Do not build or run it like this", SafetyText.Write(Of(_findings), false), StringComparison.Ordinal);
        Assert.Contains("1 serious finding to mend", SafetyText.Write(Of(_findings[1..]), false), StringComparison.Ordinal);
        Assert.False(Of(_findings[2..]).HasGrave);
        Assert.Contains("Nothing serious was found; 1 caution and 2 notes", SafetyText.Write(Of(_findings[2..]), false), StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_escapes_and_shows_the_grave_ones_first()
    {
        var page = SafetyPage.Write(Of(_findings));
        Assert.Contains("vessel &lt;1&gt;", page, StringComparison.Ordinal);
        Assert.DoesNotContain("vessel <1>", page, StringComparison.Ordinal);
        Assert.True(page.IndexOf("trapped liquid", StringComparison.Ordinal) < page.IndexOf("flammable cloud", StringComparison.Ordinal));
        Assert.True(page.IndexOf("flammable cloud", StringComparison.Ordinal) < page.IndexOf("stored energy", StringComparison.Ordinal));
        foreach (var f in _findings.SkipLast(1)) Assert.Contains(f.Do, page, StringComparison.Ordinal);
    }

    /// <summary>Where the screen is short, what is wrong, by how much and the remedy stay; where it is not, the rule comes with them.</summary>
    [Fact]
    public void Grave_lines_shorten_without_losing_the_figures()
    {
        var readout = new Readout(UnitSystem.Si, 101_325, typographic: false);
        var all = GraveLines.Of(_findings.Reverse(), readout, colour: false);
        Assert.StartsWith("DANGER", all[0], StringComparison.Ordinal);
        Assert.Contains("Every space has a relief.", string.Join(' ', all), StringComparison.Ordinal);
        Assert.DoesNotContain("flammable cloud", string.Join(' ', all), StringComparison.Ordinal);
        var one = GraveLines.Of(_findings, readout, colour: false, most: 1, wrap: 1);
        Assert.Equal(2, one.Count);
        Assert.Contains("2929 bar abs", one[0], StringComparison.Ordinal);
        Assert.Contains("1 more like these", one[1], StringComparison.Ordinal);
        Assert.Empty(GraveLines.Of(_findings[2..], readout, colour: false));
    }

    [Fact]
    public void Other_lines_leave_the_grave_ones_out_and_end_with_the_reminder()
    {
        var lines = OtherLines.Of(_findings, new Readout(UnitSystem.Si, 101_325, typographic: false)).ToArray();
        Assert.DoesNotContain(lines, l => l.StartsWith("DANGER", StringComparison.Ordinal) || l.StartsWith("SERIOUS", StringComparison.Ordinal));
        Assert.Contains("Local codes and licensed practice come first; this list is no certificate.", string.Join(' ', lines.Select(l => l.Trim())), StringComparison.Ordinal);
    }
}
