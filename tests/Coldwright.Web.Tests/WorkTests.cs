using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Coldwright.Web.Tests;

/// <summary>Mixture, long work, variants.</summary>
[Collection(BrowserTests.Name)]
public partial class WorkTests(Browser browser)
{
    [GeneratedRegex(@"mixture: ""([^""]*)""")]
    private static partial Regex MixtureLine();

    [Fact]
    public async Task AShareIsMovedAndEnvelopeFreezingAndFiguresFollow()
    {
        await using var page = await OpenPage.Open(browser, "mixture");
        await page.Tab.WaitForSelectorAsync("#envelope[data-job]");
        await page.Tab.WaitForSelectorAsync("#freezing table");
        var (before, envelope) = (await page.Figure("No-load temperature"), await page.Tab.GetAttributeAsync("#envelope", "data-job"));
        await page.Tab.WaitForSelectorAsync("#mixture-pictures figure");
        var slider = page.Tab.Locator("[data-gas=isobutane] input[type=range]");
        await slider.EvaluateAsync("s => { s.value = 14; s.dispatchEvent(new Event('input')); }");
        await page.Tab.WaitForFunctionAsync("was => document.querySelector('[data-name=\"No-load temperature\"] .value').textContent !== was", before);
        await page.Tab.WaitForFunctionAsync("job => document.getElementById('envelope').dataset.job !== job", envelope, new() { Timeout = 60000 });
        await slider.EvaluateAsync("s => s.dispatchEvent(new Event('change'))");
        await page.Tab.WaitForSelectorAsync("#undo:not([disabled])");
        var shares = MixtureLine().Match(page.Cooler.Machine).Groups[1].Value.Split(", ").ToDictionary(p => p.Split(' ')[0], p => double.Parse(p.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(0.14, shares["isobutane"], 1e-9);
        Assert.Equal(1, shares.Values.Sum(), 1e-9);
        Assert.Equal(0.38 / 0.27, shares["methane"] / shares["nitrogen"], 2e-3);
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task ABatchIsRunSurvivesLoadingAgainAndIsSeenInAnotherTab()
    {
        await using var page = await OpenPage.Open(browser, "batch");
        await page.Tab.SelectOptionAsync("#batch .by", "cubic");
        await page.Tab.ClickAsync("#batch .go");
        await page.Tab.WaitForSelectorAsync("#batch .work-progress:not([hidden])");
        await page.Tab.WaitForSelectorAsync("#batch .work-result figure", new() { Timeout = 90000 });
        var verdict = await page.Tab.InnerTextAsync("#batch .work-result .verdict");
        Assert.StartsWith("By the cubic model", await page.Tab.InnerTextAsync("#batch .work-age"), StringComparison.Ordinal);
        await page.IsFitToRead("batch");
        await page.WholePictures("batch-done");
        await page.Tab.ReloadAsync();
        await page.Tab.WaitForSelectorAsync("#batch .work-result figure");
        Assert.Equal(verdict, await page.Tab.InnerTextAsync("#batch .work-result .verdict"));
        var other = await page.Another("batch");
        await other.WaitForSelectorAsync("#batch .work-result figure");
        Assert.Equal(verdict, await other.InnerTextAsync("#batch .work-result .verdict"));
        Assert.Contains("until the program ends", await other.InnerTextAsync("#batch .kept"), StringComparison.Ordinal);
        // Every tab closed, and a visitor who has never been here.
        await page.Context.CloseAsync();
        other = await page.NewVisitor(browser, "batch");
        await other.WaitForSelectorAsync("#batch .work-result figure");
        Assert.Equal(verdict, await other.InnerTextAsync("#batch .work-result .verdict"));
        // After a change it is still there, and said to be of an earlier state.
        page.Cooler.Machine = page.Cooler.Machine.Replace("conductance: 100 W/K", "conductance: 99 W/K", StringComparison.Ordinal);
        await other.WaitForFunctionAsync("() => document.querySelector('#batch .work-age').textContent.includes('changed since')");
    }

    [Fact]
    public async Task ACooldownIsShownWithItsCharts()
    {
        await using var page = await OpenPage.Open(browser, "cool");
        await page.Tab.ClickAsync("#cool .go");
        await page.Tab.WaitForSelectorAsync("#cool .work-result figure", new() { Timeout = 120_000 });
        Assert.Contains("after", await page.Tab.InnerTextAsync("#cool .work-result .verdict"), StringComparison.Ordinal);
        Assert.True(await page.Tab.Locator("#cool .work-result figure").CountAsync() >= 3);
        await page.IsFitToRead("cool");
        await page.WholePictures("cool-done");
        await page.Tab.SelectOptionAsync("#units", "us");
        await page.Tab.WaitForFunctionAsync("() => document.querySelector('#cool .work-result .verdict').textContent.includes('°F')");
        Assert.Empty(await page.SiLines("#cool .work-result"));
        Assert.Empty(page.Complaints);
    }

    [Theory]
    [InlineData("cool")]
    [InlineData("help")]
    public async Task LongWorkIsStopped(string view)
    {
        await using var page = await OpenPage.Open(browser, view);
        await page.Tab.SelectOptionAsync($"#{view} .by", "reference");
        await page.Tab.ClickAsync($"#{view} .go");
        await page.Tab.WaitForSelectorAsync($"#{view} .work-progress:not([hidden])");
        // It goes on while the page is loaded again, and is found there.
        await page.Tab.ReloadAsync();
        await page.Tab.WaitForSelectorAsync($"#{view} .work-progress:not([hidden])");
        await page.Tab.ClickAsync($"#{view} .stop");
        await page.Tab.WaitForFunctionAsync("v => document.querySelector(`#${v} .work-age`).textContent === 'Stopped.'", view, new() { Timeout = 60000 });
        Assert.True(await page.Tab.IsEnabledAsync($"#{view} .go"));
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task TwoVariantsStandSideBySide()
    {
        await using var page = await OpenPage.Open(browser, "compare");
        await page.Tab.FillAsync("#keep input", "first-try");
        await page.Tab.ClickAsync("#keep button");
        await page.Tab.WaitForSelectorAsync("#sides option[value=first-try]", new() { State = WaitForSelectorState.Attached });
        Assert.Equal(page.Cooler.Machine, await File.ReadAllTextAsync(Path.Combine(page.Cooler.Path, "variants", "first-try", "machine.yaml"), TestContext.Current.CancellationToken));
        page.Cooler.Machine = page.Cooler.Machine.Replace("conductance: 100 W/K", "conductance: 70 W/K", StringComparison.Ordinal);
        await page.Tab.WaitForSelectorAsync("[data-notice=outside]");
        await page.Tab.ClickAsync("#sides .go");
        await page.Tab.WaitForSelectorAsync("#compare-result table", new() { Timeout = 60000 });
        var said = await page.Tab.InnerTextAsync("#compare-result");
        Assert.Contains("parts recuperator conductance", said, StringComparison.Ordinal);
        Assert.Contains("70 W/K", said, StringComparison.Ordinal);
        Assert.Equal(2, await page.Tab.Locator("#compare-result svg.loop").CountAsync());
        await page.Picture("compare-done");
        await page.Tab.ClickAsync("#sides .take");
        await page.Tab.WaitForSelectorAsync("#undo:not([disabled])");
        Assert.Contains("conductance: 100 W/K", page.Cooler.Machine, StringComparison.Ordinal);
        Assert.Empty(page.Complaints);
    }
}
