using Coldwright.Machine.Files;
using Coldwright.Machine.Tests.Files;

namespace Coldwright.Machine.Tests.Layout;

/// <summary>A buffer hangs between the high side and the suction, valves or not; anywhere else it is refused by name.</summary>
public sealed class BufferLayouts
{
    private const string Fill = "  - {from: aftercooler, to: buffer, tube: 1/4 in ACR, length: 0.4 m, in: room}\n";
    private const string Bleed = "  - {from: buffer, to: compressor, tube: 1/4 in ACR, length: 0.6 m, in: room}\n";

    [Theory]
    [InlineData(Fill, "", "'buffer' is to be filled by one line", "there is none")]
    [InlineData(Bleed, "", "'buffer' is to bleed by one line to the compressor's suction", "there is none")]
    [InlineData(Fill, "  - {from: recuperator.high, to: buffer}\n", "to be filled by one line from the aftercooler or the compressor", "comes from 'recuperator'")]
    [InlineData(Bleed, "  - {from: buffer, to: coil}\n", "to bleed by one line to the compressor's suction", "leads to 'coil'")]
    [InlineData(Fill, Fill + Fill, "to be filled by one line", "there is none")]
    [InlineData("  buffer:   ", "  tank: {kind: buffer, volume: 1 L, opening-pressure: 19 barg, bleed-bore: 1 mm}\n  buffer:   ", "2 parts of kind buffer", "tank")]
    public void Refused(string old, string replacement, params string[] expected)
    {
        var problems = MachineFolderReader.ReadTexts(Examples.With(old, replacement)).Problems;
        Assert.True(problems.Any(p => p.Line > 0 && expected.All(e => p.Message.Contains(e, StringComparison.Ordinal))), string.Join(" | ", problems));
    }

    [Fact]
    public void ValvesMayStandInBothLines()
    {
        var text = Examples.With(Fill, "  - {from: compressor, to: unloader}\n  - {from: unloader, to: buffer}\n")
            .Replace(Bleed, "  - {from: buffer, to: bleed-valve}\n  - {from: bleed-valve, to: compressor}\n", StringComparison.Ordinal)
            .Replace("parts:\n", "parts:\n  unloader: {kind: valve}\n  bleed-valve: {kind: valve}\n", StringComparison.Ordinal);
        var read = MachineFolderReader.ReadTexts(text);
        Assert.Empty(read.Problems);
        Assert.Equal("buffer", read.Layout!.Buffer!.Name);
    }

    [Fact]
    public void AReliefMayHangOnTheBuffer()
    {
        var text = Examples.With(Bleed, Bleed + "  - {from: buffer, to: tank-relief, tube: 1/4 in ACR}\n")
            .Replace("parts:\n", "parts:\n  tank-relief: {kind: relief, set-pressure: 26 barg}\n", StringComparison.Ordinal);
        Assert.Empty(MachineFolderReader.ReadTexts(text).Problems);
    }

    [Fact]
    public void WithoutABufferIsGood()
    {
        var text = Examples.With(Fill + Bleed, "");
        var start = text.IndexOf("  buffer:   ", StringComparison.Ordinal);
        text = text.Remove(start, text.IndexOf("  fill-valve:", StringComparison.Ordinal) - start);
        var read = MachineFolderReader.ReadTexts(text);
        Assert.Empty(read.Problems);
        Assert.Null(read.Layout!.Buffer);
    }

    [Fact]
    public void ValvesThatPartAndMeetAgainAreFollowedQuickly()
    {
        // Sixty pairs of lines to a relief: by every way there is, this would be 2^60 steps.
        var parts = string.Concat(Enumerable.Range(0, 61).Select(i => $"  v{i}: {{kind: valve}}\n"));
        var lines = "  - {from: aftercooler, to: v0}\n" + string.Concat(Enumerable.Range(0, 60).SelectMany(i => Enumerable.Repeat($"  - {{from: v{i}, to: v{i + 1}}}\n", 2))) + "  - {from: v60, to: loop-relief}\n";
        var text = Examples.With(Fill, Fill + lines).Replace("parts:\n", "parts:\n" + parts, StringComparison.Ordinal);
        Assert.NotEmpty(MachineFolderReader.ReadTexts(text).Problems);
    }
}
