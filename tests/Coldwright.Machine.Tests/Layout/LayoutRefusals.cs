using Coldwright.Machine.Files;
using Coldwright.Machine.Tests.Files;

namespace Coldwright.Machine.Tests.Layout;

/// <summary>Layouts outside the family the solvers handle are refused by name, with what was expected.</summary>
public sealed class LayoutRefusals
{
    private const string Second = "  flask:\n    kind: flask\n    volume: 2 L\n";

    public static TheoryData<string, string, string[]> Cases => new()
    {
        { "{from: recuperator.high, to: throttle,", "{from: recuperator.high, to: coil,", ["after 'recuperator.high' the mixture reaches 'coil' (coil); expected is a throttle"] },
        { "  - {from: throttle, to: coil, tube: 1/4 in ACR, length: 0.2 m, in: cold-box}\n", "", ["no line leads on from 'throttle'", "a coil"] },
        { "{from: recuperator.low, to: warm-exchanger.low,", "{from: recuperator.low, to: compressor,", ["2 lines lead into 'compressor'"] },
        { "to: recuperator.low,", "to: recuperator.feed,", ["reaches 'recuperator.feed'", "expected is 'recuperator.low'"] },
        { "{from: coil, to: recuperator.low,", "{from: coil, to: warm-exchanger.low,", ["2 lines lead into 'warm-exchanger.low'"] },
        { "from: fill-valve, to: precooler.feed", "from: fill-valve, to: recuperator.feed", ["the product reaches 'recuperator.feed' (recuperator)", "a precooler's feed stream or a vessel"] },
        { Second, Second + "  hot-compressor:\n    kind: compressor\n    type: rotary\n    molar-flow: 0.1 mol/s\n    isentropic-efficiency: 0.5\n    motor-efficiency: 0.8\n    maximum-discharge-temperature: 110 °C\n", ["2 parts of kind compressor (compressor, hot-compressor)"] },
        { Second, Second + "  spare-valve: {kind: valve}\n", ["'spare-valve' (valve) lies on no path"] },
        { Second, Second + "  block: {kind: block}\n", ["a vessel ('vessel') and a block ('block')"] },
        { "  - {from: drain-valve, to: flask,", "  - {from: coil, to: flask,", ["splits after 'coil'"] },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void SayThePartAndWhatWasExpected(string old, string replacement, string[] expected)
    {
        var read = MachineFolderReader.ReadTexts(Examples.With(old, replacement));
        Assert.Null(read.Layout);
        Assert.Contains(read.Problems, p => p.Line > 0 && expected.All(e => p.Message.Contains(e, StringComparison.Ordinal)));
    }

    [Fact]
    public void WithoutPrecoolerAndWarmExchangerIsGood()
    {
        var text = Simple(Examples.Workshop);
        var read = MachineFolderReader.ReadTexts(text);
        Assert.Empty(read.Problems);
        Assert.Null(read.Layout!.Precooler);
        Assert.Null(read.Layout.WarmExchanger);
        Assert.False(read.Layout.FeedPrecooled);
    }

    [Fact]
    public void ABlockInsteadOfAVesselIsGood()
    {
        var lines = Simple(Examples.Workshop).Split('\n').Where(l => !l.Contains("vessel", StringComparison.Ordinal) || !l.Contains("from", StringComparison.Ordinal)).ToList();
        var text = string.Join('\n', lines.Where(l => !l.Contains("bottle, to", StringComparison.Ordinal) && !l.Contains("drain-valve", StringComparison.Ordinal) && !l.Contains("fill-valve", StringComparison.Ordinal)));
        text = Without(Without(Without(text, "vessel"), "vessel-relief"), "flask");
        text = Without(text, "bottle").Replace("parts:\n", "parts:\n  plate: {kind: block}\n", StringComparison.Ordinal).Replace("place: inside", "place: around", StringComparison.Ordinal);
        var read = MachineFolderReader.ReadTexts(text);
        Assert.Empty(read.Problems);
        Assert.Equal("plate", read.Layout!.Block!.Name);
        Assert.Null(read.Layout.Feed);
        Assert.Empty(read.Layout.ProductPath);
    }

    [Fact]
    public void AValveMayStandInTheLoopAndBeforeARelief()
    {
        var text = Examples.With("{from: coil, to: recuperator.low,", "{from: coil, to: stop-valve}\n  - {from: stop-valve, to: recuperator.low,")
            .Replace("{from: aftercooler, to: loop-relief,", "{from: aftercooler, to: relief-valve}\n  - {from: relief-valve, to: loop-relief,", StringComparison.Ordinal)
            .Replace("parts:\n", "parts:\n  stop-valve: {kind: valve}\n  relief-valve: {kind: valve}\n", StringComparison.Ordinal);
        var read = MachineFolderReader.ReadTexts(text);
        Assert.Empty(read.Problems);
        Assert.Contains(read.Layout!.LoopPath, s => s.Port == "stop-valve");
    }

    /// <summary>The workshop without precooler and warm exchanger.</summary>
    private static string Simple(string text)
    {
        text = Without(Without(text, "warm-exchanger"), "precooler");
        var lines = text.Split('\n').Where(l => !l.Contains("from: warm-exchanger", StringComparison.Ordinal) && !l.Contains("from: precooler", StringComparison.Ordinal));
        return string.Join('\n', lines)
            .Replace("to: warm-exchanger.high", "to: recuperator.high", StringComparison.Ordinal)
            .Replace("to: warm-exchanger.low", "to: compressor", StringComparison.Ordinal)
            .Replace("to: precooler.feed", "to: vessel", StringComparison.Ordinal);
    }

    private static string Without(string text, string part)
    {
        var lines = text.Split('\n').ToList();
        var at = lines.IndexOf($"  {part}:");
        if (at < 0) at = lines.FindIndex(l => l.StartsWith($"  {part}: ", StringComparison.Ordinal));
        var keys = lines.Skip(at + 1).TakeWhile(l => l.StartsWith("    ", StringComparison.Ordinal)).Count();
        lines.RemoveRange(at, keys + 1);
        return string.Join('\n', lines);
    }
}
