using System.Text.Json;
using Coldwright.Report.Batch;

namespace Coldwright.Report.Tests.Batch;

/// <summary>A batch on screen, page and as JSON.</summary>
public class BatchReportTests
{
    public static TheoryData<int> Reports => [0, 1, 2];

    private static BatchReport Of(int which) => which switch { 0 => FakeBatch.Full, 1 => FakeBatch.Full with { Units = UnitSystem.Us }, _ => FakeBatch.Empty };

    [Theory]
    [MemberData(nameof(Reports))]
    public void TheScreenIsNoWiderThanATerminal(int which)
    {
        var text = BatchText.Write(Of(which), colour: false);
        Assert.All(text.Split('\n'), l => Assert.True(l.Length <= 88, $"{l.Length} columns: {l}"));
        Assert.Contains("in the flask", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\e[", text, StringComparison.Ordinal);
    }

    [Fact]
    public void TheScreenTellsTheLedgerTheScheduleAndTheCompressor()
    {
        var text = BatchText.Write(FakeBatch.Full, colour: false);
        foreach (var word in (string[])["200 g", "60.0 g", "80.0 g", "opened at", "Feed compressor", "must rest", "Least electricity", "of water", "for 5.0 min, until"]) Assert.Contains(word, text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Reports))]
    public void ThePageStandsAlone(int which)
    {
        var page = BatchPage.Write(Of(which));
        Assert.Contains("Where did the gas go?", page, StringComparison.Ordinal);
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("src=", page, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", page, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Reports))]
    public void TheJsonHasItsFieldsInGrams(int which)
    {
        using var document = JsonDocument.Parse(BatchJson.Write(Of(which)));
        var root = document.RootElement;
        var grams = root.GetProperty("ledger_g");
        Assert.Equal(1e3 * Of(which).Result.Run.Grams.FedKg, grams.GetProperty("fed").GetDouble(), 1e-9);
        foreach (var field in (string[])["findings", "warnings", "schedule", "series", "ledger_J", "collected_L_h", "energy_kWh_L"]) Assert.True(root.TryGetProperty(field, out _), field);
    }
}
