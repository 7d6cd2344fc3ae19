using Coldwright.Machine.Files;
using Coldwright.Simulation.Rating;
using Microsoft.Playwright;

namespace Coldwright.Web.Tests;

/// <summary>Every view with the example, on a desk and on a telephone.</summary>
[Collection(BrowserTests.Name)]
public class ViewTests(Browser browser)
{
    private static readonly string[] _views = ["stands", "help", "mixture", "blend", "size", "charge", "cool", "batch", "compare"];

    [Fact]
    public async Task EachOpensWithTheExample()
    {
        await using var page = await OpenPage.Open(browser);
        await page.Settled();
        foreach (var width in (int[])[OpenPage.Desktop, OpenPage.Phone])
        {
            await page.Tab.SetViewportSizeAsync(width, width == OpenPage.Phone ? 844 : 860);
            await page.Tab.ReloadAsync();
            await OpenPage.Ready(page.Tab);
            foreach (var view in _views)
            {
                await page.GoTo(view);
                await page.Tab.WaitForFunctionAsync("v => document.body.dataset.view === v", view);
                Assert.Equal("workshop cooler", await page.Tab.InnerTextAsync("h1"));
                Assert.Equal(view, await page.Tab.GetAttributeAsync(".view:visible", "id"));
                Assert.Equal(1, await page.Tab.Locator(".view:visible").CountAsync());
                Assert.Matches(@"^\d+\.\d\sK$", await page.Figure("No-load temperature"));
                Assert.StartsWith("⚑ Safety:", await page.Tab.InnerTextAsync("#findings-line"), StringComparison.Ordinal);
                var wider = await page.Tab.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth");
                Assert.True(wider <= 0, $"{view} is {wider} px wider than a screen of {width} px");
                await page.Picture($"{view}-{width}");
            }
        }
        Assert.Empty(page.Complaints);
        Assert.All(page.Addresses, a => Assert.True(a.StartsWith(page.Server.Url, StringComparison.Ordinal) || a.StartsWith("data:", StringComparison.Ordinal), a));
    }

    /// <summary>Names, roles, contrast, order in light; contrast again in dark.</summary>
    [Fact]
    public async Task EachIsAccessible()
    {
        await using var page = await OpenPage.Open(browser);
        await page.Settled();
        await page.Tab.SelectOptionAsync("#part-choice", "recuperator");
        await page.Tab.ClickAsync("#findings-line");
        var wrong = new List<string>();
        foreach (var view in _views)
        {
            await page.Tab.EvaluateAsync("v => { location.hash = v; }", view);
            await page.Tab.WaitForFunctionAsync("v => document.body.dataset.view === v", view);
            if (view == "mixture") await page.Tab.WaitForSelectorAsync("#envelope[data-job]");
            foreach (var scheme in (ColorScheme[])[ColorScheme.Light, ColorScheme.Dark])
            {
                await page.Tab.EmulateMediaAsync(new() { ColorScheme = scheme });
                // What stands around the views is the same for all of them.
                wrong.AddRange((await page.AccessFaults(view == _views[0] ? null : $"#{view}", contrastAlone: scheme == ColorScheme.Dark)).Select(f => $"{view}, {scheme}: {f}"));
                if (view == "mixture") await page.Picture($"mixture-{scheme.ToString().ToLowerInvariant()}");
            }
        }
        if (wrong.Count > 0) Assert.Fail(string.Join(Environment.NewLine, wrong));
    }

    [Fact]
    public async Task TheReferenceAnswerFollowsTheFirstAndReplacesIt()
    {
        await using var page = await OpenPage.Open(browser);
        await page.Tab.WaitForSelectorAsync("#now-source[data-state=first], #now-source[data-state=settled]");
        await page.Settled();
        Assert.Equal("reference", await page.Tab.GetAttributeAsync("body", "data-model"));
        Assert.Contains("cubic model as second opinion", await page.Tab.InnerTextAsync("#now-source"), StringComparison.Ordinal);
        // What the command prints for the same folder is what the page shows.
        var folder = MachineFolderReader.Read(page.Cooler.Path);
        var rated = CoolerRating.Rate(folder.Machine!, folder.Layout!, folder.Shop!, new RatingOptions(), null, TestContext.Current.CancellationToken);
        Assert.Equal(FormattableString.Invariant($"{rated.Main.NoLoadTemperatureK:0.0}\u00a0K"), await page.Figure("No-load temperature"));
    }

    [Fact]
    public async Task UnitsAreKept()
    {
        await using var page = await OpenPage.Open(browser);
        await page.Tab.SelectOptionAsync("#units", "us");
        await page.Tab.WaitForFunctionAsync("() => document.querySelector('[data-name=\"No-load temperature\"] .value')?.textContent.includes('°F')");
        await page.Tab.ReloadAsync();
        await OpenPage.Ready(page.Tab);
        Assert.Contains("°F", await page.Figure("No-load temperature"), StringComparison.Ordinal);
        Assert.Equal("us", await page.Tab.InputValueAsync("#units"));
        await page.Settled();
        // Sentences too: verdict, notes, tables, findings.
        await page.Tab.ClickAsync("#findings-line");
        Assert.Contains("°F", await page.Tab.InnerTextAsync("#stands-answer .verdict"), StringComparison.Ordinal);
        foreach (var view in (string[])["stands", "mixture"])
        {
            await page.GoTo(view);
            if (view == "mixture") await page.Tab.WaitForSelectorAsync("#freezing table");
            Assert.Empty(await page.SiLines("main"));
        }
    }

    [Fact]
    public async Task FindingsAreAlwaysThereAndOpenOnRequest()
    {
        await using var page = await OpenPage.Open(browser, "batch");
        Assert.Contains("flask: cold burns", await page.Tab.InnerTextAsync("#findings-line"), StringComparison.Ordinal);
        await page.Tab.ClickAsync("#findings-line");
        Assert.True(await page.Tab.Locator("#findings-all .finding").CountAsync() > 2);
        Assert.Contains("Source:", await page.Tab.InnerTextAsync("#findings-all"), StringComparison.Ordinal);
        Assert.Equal("true", await page.Tab.GetAttributeAsync("#findings-line", "aria-expanded"));
    }
}
