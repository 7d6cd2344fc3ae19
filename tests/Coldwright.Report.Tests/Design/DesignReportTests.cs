using System.Text.Json;
using System.Text.RegularExpressions;
using Coldwright.Design.Blending;
using Coldwright.Report.Blending;
using Coldwright.Report.Charging;
using Coldwright.Report.Sizing;

namespace Coldwright.Report.Tests.Design;

/// <summary>Terminal, JSON and page of blend, charge and size.</summary>
public class DesignReportTests
{
    public static TheoryData<string> Kinds => ["blend", "blend-cubic", "blend-litres", "blend-lowest", "blend-endless", "charge", "charge-too-much", "size", "size-nothing"];

    private static (string Text, string Colour, string Json, string Page) Of(string kind, UnitSystem units)
    {
        if (kind.StartsWith("blend", StringComparison.Ordinal))
        {
            var goal = kind switch { "blend-litres" => BlendGoal.Litres, "blend-lowest" => BlendGoal.Lowest, "blend-endless" => BlendGoal.Endless, _ => BlendGoal.Cooling };
            var b = FakeDesign.Blend(kind != "blend-cubic", goal, units);
            return (BlendText.Write(b, false), BlendText.Write(b, true), BlendJson.Write(b), BlendPage.Write(b));
        }
        if (kind.StartsWith("charge", StringComparison.Ordinal))
        {
            var c = FakeDesign.Charge(kind == "charge-too-much", units);
            return (ChargeText.Write(c, false), ChargeText.Write(c, true), ChargeJson.Write(c), ChargePage.Write(c));
        }
        var s = FakeDesign.Size(kind == "size", units);
        return (SizeText.Write(s, false), SizeText.Write(s, true), SizeJson.Write(s), SizePage.Write(s));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void LinesFitTheTerminalAndColourChangesNoWord(string kind)
    {
        foreach (var units in (UnitSystem[])[UnitSystem.Si, UnitSystem.Us])
        {
            var (text, colour, _, _) = Of(kind, units);
            Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 88, $"{line.Length}: {line}"));
            Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
            Assert.Contains("Local codes", text, StringComparison.Ordinal);
            Assert.Equal(text, Regex.Replace(colour, "\e\\[[0-9;]*m", ""));
        }
    }

    /// <summary>One file that asks nothing from outside, with names escaped, a picture in both sizes where there is one, and the sources.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void ThePageStandsAlone(string kind)
    {
        foreach (var units in (UnitSystem[])[UnitSystem.Si, UnitSystem.Us])
        {
            string page = Of(kind, units).Page;
            Assert.StartsWith("<!DOCTYPE html>", page, StringComparison.Ordinal);
            Assert.Contains("&lt;b&gt;cooler&lt;/b&gt;", page, StringComparison.Ordinal);
            Assert.DoesNotContain("<b>cooler", page, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
            Assert.DoesNotMatch("<script|src=|<link|@import|url\\(", page);
            if (kind != "size-nothing") Assert.Contains("<svg", page, StringComparison.Ordinal);
            foreach (string open in (string[])["section", "table", "figure", "tr", "td", "ul"])
                Assert.Equal(Regex.Count(page, $"<{open}[ >]"), Regex.Count(page, $"</{open}>"));
        }
    }

    /// <summary>Machine-readable figures are SI and do not hang on what a person reads first.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void TheJsonIsSiWhateverAPersonReads(string kind)
    {
        Assert.Equal(Of(kind, UnitSystem.Si).Json, Of(kind, UnitSystem.Us).Json);
        using var document = JsonDocument.Parse(Of(kind, UnitSystem.Si).Json);
        var root = document.RootElement;
        Assert.Equal($"coldwright/{kind.Split('-')[0]}/1", root.GetProperty("schema").GetString());
        Assert.Equal("<b>cooler</b>", root.GetProperty("machine").GetString());
        foreach (string field in (string[])["warnings", "findings"]) Assert.Equal(JsonValueKind.Array, root.GetProperty(field).ValueKind);
    }

    [Fact]
    public void TheBlendsJsonHoldsItsFigures()
    {
        using var document = JsonDocument.Parse(BlendJson.Write(FakeDesign.Blend(true, BlendGoal.Litres)));
        var root = document.RootElement;
        Assert.Equal("collected_L_h", root.GetProperty("goal").GetString());
        var figures = root.GetProperty("best").GetProperty("figures");
        Assert.Equal(34.12, figures.GetProperty("merit").GetDouble(), 1e-9);
        Assert.Equal(0.324, figures.GetProperty("collected_L_h").GetDouble());
        Assert.Equal("cubic", root.GetProperty("best").GetProperty("second_opinion").GetProperty("model").GetString());
        Assert.Equal(8.21, root.GetProperty("effort").GetProperty("processor_seconds").GetDouble());
        Assert.Equal(4, root.GetProperty("limits_price").GetArrayLength());
        Assert.Equal(JsonValueKind.Null, root.GetProperty("limits_price")[3].GetProperty("relaxed").ValueKind);
    }

    /// <summary>With one model there is no column of the other, and no word of the worse of two.</summary>
    [Fact]
    public void OneModelAloneIsNotCalledTheWorseOfTwo()
    {
        Assert.Contains("worse of the models", Regex.Replace(BlendText.Write(FakeDesign.Blend(true), false), "\\s+", " "), StringComparison.Ordinal);
        Assert.DoesNotContain("worse of the models", Regex.Replace(BlendText.Write(FakeDesign.Blend(false), false), "\\s+", " "), StringComparison.Ordinal);
        Assert.Contains("the same, cubic model", BlendPage.Write(FakeDesign.Blend(true)), StringComparison.Ordinal);
        Assert.DoesNotContain("the same, cubic model", BlendPage.Write(FakeDesign.Blend(false)), StringComparison.Ordinal);
    }

    [Fact]
    public void TheCutListAddsUpOnlyWhereEveryPriceIsKnown()
    {
        string text = SizeText.Write(FakeDesign.Size(true), false), page = SizePage.Write(FakeDesign.Size(true));
        Assert.Matches(@"3\.20 m +1/4 in ACR, 9\.28 EUR", text);
        Assert.Contains("no price in shop.yaml", page, StringComparison.Ordinal);
        Assert.Contains("Nothing of the stock", SizeText.Write(FakeDesign.Size(false), false), StringComparison.Ordinal);
        Assert.Contains("no coil of it goes into this vessel", page, StringComparison.Ordinal);
        using var document = JsonDocument.Parse(SizeJson.Write(FakeDesign.Size(false)));
        Assert.Equal(JsonValueKind.Null, document.RootElement.GetProperty("best").ValueKind);
    }

    [Fact]
    public void TheRecipeSaysScaleOrGaugeAndWhatIsLeft()
    {
        string text = ChargeText.Write(FakeDesign.Charge(false), false);
        foreach (string word in (string[])["scale", "gauge", "a fine leak", "isobutane"]) Assert.Contains(word, text, StringComparison.Ordinal);
        Assert.Contains("psig", ChargeText.Write(FakeDesign.Charge(false, UnitSystem.Us), false), StringComparison.Ordinal);
        using var document = JsonDocument.Parse(ChargeJson.Write(FakeDesign.Charge(false)));
        var steps = document.RootElement.GetProperty("steps");
        Assert.Equal(120, steps[1].GetProperty("grams").GetDouble(), 1e-9);
        Assert.Equal(320, steps.EnumerateArray().Sum(s => s.GetProperty("grams").GetDouble()), 1e-9);
    }
}
