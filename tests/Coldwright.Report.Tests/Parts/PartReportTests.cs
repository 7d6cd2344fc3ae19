using System.Text.Json;
using System.Text.RegularExpressions;
using Coldwright.Report.Parts;

namespace Coldwright.Report.Tests.Parts;

/// <summary>The three forms of a part's report.</summary>
public class PartReportTests
{
    private static PartReport Of(bool us) => us ? FakePart.Us : FakePart.Si;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void LinesFitTheTerminal(bool us)
    {
        var text = PartText.Write(Of(us), colour: false);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= PartText.Columns, $"{line.Length}: {line}"));
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        Assert.Contains("no heat from the room was counted", text, StringComparison.Ordinal);
        Assert.Contains("BROKEN", text, StringComparison.Ordinal);
        Assert.Contains("DANGER", text, StringComparison.Ordinal);
        Assert.Contains("Local codes", text, StringComparison.Ordinal);
    }

    [Fact]
    public void ColourChangesNoWord() => Assert.Equal(PartText.Write(FakePart.Si, false), Regex.Replace(PartText.Write(FakePart.Si, true), "\e\\[[0-9;]*m", ""));

    [Theory]
    [InlineData("Heat exchanged", @"1024 W \[1001 to 1048\]")]
    [InlineData("Pressure lost, low side", @"1\.03 kPa \[0\.684 to 1\.38\]")]
    [InlineData("Streams closest", @"11\.1 K")]
    [InlineData("Pressure  ", @"4\.61 bar abs \(3\.60 bar gauge\) \[4\.00 to 5\.00\]")]
    [InlineData("Oil that passes", @"600 ppm \[80\.0 to 2700\]")]
    [InlineData("Displacement", @"10\.6 cm³")]
    [InlineData("Heat in the wall", @"382 kJ")]
    [InlineData("Nothing", @"0 W")]
    [InlineData("Closes in", @"without end")]
    [InlineData("Choked", @"no")]
    public void FiguresStandInUnitsOfAReadableSize(string name, string value) => Assert.Matches($"  {name}.*  {value}", PartText.Write(FakePart.Si, false));

    [Fact]
    public void UsUnitsComeFirstWhenAsked()
    {
        var text = PartText.Write(FakePart.Us, false);
        Assert.Matches(@"High-pressure stream in .*-31\.0 °F \(238\.[12] K\)", text);
        Assert.Matches(@"Streams closest .*20\.0 °F", text);
        Assert.Matches(@"Pressure lost, low side .*0\.150 psi ", text);
        Assert.Matches(@"Pressure  .*psig \(66\.\d+ psia\)", text);
    }

    [Fact]
    public void JsonHoldsFiguresBandsAndProfilesInSi()
    {
        using var document = JsonDocument.Parse(PartJson.Write(FakePart.Us));
        var root = document.RootElement;
        Assert.Equal("coldwright/rate-part/1", root.GetProperty("schema").GetString());
        var figures = root.GetProperty("figures");
        Assert.Equal(1024.3, figures.GetProperty("duty_W").GetDouble());
        Assert.Equal("no", figures.GetProperty("choked").GetString());
        Assert.Equal(JsonValueKind.Null, figures.GetProperty("endless_s").ValueKind);
        Assert.Equal(1047.7, figures.GetProperty("bands").GetProperty("duty_W")[1].GetDouble(), 1e-9);
        Assert.Equal(JsonValueKind.Null, figures.GetProperty("bands").GetProperty("endless_s")[1].ValueKind);
        var profiles = root.GetProperty("profiles");
        Assert.Equal(3, profiles.GetArrayLength());
        Assert.Equal(240, profiles[0].GetProperty("lines")[0].GetProperty("y")[0].GetDouble());
        Assert.Equal("K", profiles[0].GetProperty("y").GetProperty("unit").GetString());
        Assert.Equal("vapour+liquid", profiles[0].GetProperty("above").GetProperty("names")[0].GetString());
        Assert.Equal(2.83, profiles[2].GetProperty("bars")[0].GetProperty("deviation").GetDouble());
        Assert.True(root.GetProperty("limits")[0].GetProperty("broken").GetBoolean());
        foreach (var field in (string[])["operating_point", "inlet", "balance", "sources", "warnings", "findings", "verdict"]) Assert.True(root.TryGetProperty(field, out _), field);
    }

    [Fact]
    public void AFigureThatIsNoNumberIsADefectAndNotWritten()
    {
        var rating = FakePart.Si.Rating;
        var broken = FakePart.Si with { Rating = rating with { Sections = [new("inlet", "", new Simulation.Parts.PartFigure("x_K", "x", double.NaN, "K"))] } };
        Assert.Throws<InvalidOperationException>(() => PartJson.Write(broken));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void ThePageAsksNothingFromOutsideAndIsWellFormed(bool us)
    {
        var page = PartPage.Write(Of(us));
        Assert.DoesNotContain("http", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotMatch("""(src|href)\s*=|url\(|@import|<script|<link""", page);
        Assert.DoesNotContain("NaN", page);
        Assert.DoesNotContain("∞", page);
        var open = new Stack<string>();
        foreach (Match tag in Regex.Matches(page, "<(/?)([a-zA-Z0-9]+)[^>]*?(/?)>"))
        {
            if (tag.Groups[2].Value is "meta" or "br" || tag.Groups[3].Value == "/") continue;
            if (tag.Groups[1].Value == "") open.Push(tag.Groups[2].Value);
            else Assert.Equal(open.Pop(), tag.Groups[2].Value);
        }
        Assert.Empty(open);
    }

    [Fact]
    public void EveryPictureHasCaptionAndTable()
    {
        var figures = Regex.Matches(PartPage.Write(FakePart.Si), "<figure.*?</figure>", RegexOptions.Singleline);
        Assert.Equal(3, figures.Count);
        Assert.All(figures, f => Assert.Matches("(?s)<figcaption>.{60,}</figcaption>.*<details>.*<table>", f.Value));
        Assert.Contains("11.1", figures[0].Value, StringComparison.Ordinal);
        Assert.Contains("2 liquids", figures[0].Value.Replace("liquid + second liquid", "2 liquids", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("19.0 ± 2.8 W", figures[2].Value, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cold-box", "part-cold-box.html")]
    [InlineData("my part/2", "part-my-part-2.html")]
    [InlineData("../x", "part----x.html")]
    public void FileNamesHoldNoPath(string part, string file) => Assert.Equal(file, PartPage.FileName(part));
}
