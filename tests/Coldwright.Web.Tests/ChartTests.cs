namespace Coldwright.Web.Tests;

/// <summary>Pictures: values under the pointer and by keys, a part shown larger, taken along, a table behind each.</summary>
[Collection(BrowserTests.Name)]
public class ChartTests(Browser browser, ChartTests.SharedPage shared) : IClassFixture<ChartTests.SharedPage>
{
    /// <summary>One page for all tests of this class: none of them changes the cooler.</summary>
    public sealed class SharedPage : IAsyncLifetime
    {
        private OpenPage? _page;

        public ValueTask InitializeAsync() => ValueTask.CompletedTask;

        internal async Task<OpenPage> Get(Browser browser)
        {
            if (_page is null)
            {
                _page = await OpenPage.Open(browser);
                await _page.Settled();
            }
            return _page;
        }

        public ValueTask DisposeAsync() => _page?.DisposeAsync() ?? ValueTask.CompletedTask;
    }

    private const string First = "#stands-pictures svg.chart.wide[data-plot]";

    [Fact]
    public async Task EveryPictureHasItsTableAndTools()
    {
        var page = await shared.Get(browser);
        var figures = await page.Tab.Locator("#stands-pictures figure").AllAsync();
        Assert.InRange(figures.Count, 3, 12);
        foreach (var figure in figures)
        {
            Assert.True(await figure.Locator("details table").CountAsync() > 0);
            Assert.True(await figure.Locator(".chart-tools button").CountAsync() >= 3);
        }
    }

    [Fact]
    public async Task PointerAndKeysShowValues()
    {
        var page = await shared.Get(browser);
        var chart = page.Tab.Locator(First).First;
        await chart.FocusAsync();
        await page.Tab.Keyboard.PressAsync("0");
        await chart.ScrollIntoViewIfNeededAsync();
        await chart.Locator(".touch").Nth(4).HoverAsync(new() { Force = true });
        Assert.Contains("cooling", await page.Tab.InnerTextAsync("#hover"), StringComparison.Ordinal);
        await chart.FocusAsync();
        await page.Tab.Keyboard.PressAsync("ArrowRight");
        var one = await page.Tab.InnerTextAsync("#spoken");
        await page.Tab.Keyboard.PressAsync("ArrowRight");
        Assert.NotEqual("", one);
        Assert.NotEqual(one, await page.Tab.InnerTextAsync("#spoken"));
    }

    [Fact]
    public async Task APartIsShownLargerAndTheWholeAgain()
    {
        var page = await shared.Get(browser);
        var chart = page.Tab.Locator(First).First;
        Task<string> Ticks() => chart.EvaluateAsync<string>("s => [...s.querySelectorAll('text.tick, text.zoomed')].filter(t => t.style.display !== 'none').map(t => t.textContent).join(' ')");
        Task<string> Line() => chart.EvaluateAsync<string>("s => s.querySelector('polyline').getAttribute('points')");
        var (ticks, line) = (await Ticks(), await Line());
        await chart.FocusAsync();
        await page.Tab.Keyboard.PressAsync("+");
        Assert.NotEqual(ticks, await Ticks());
        Assert.NotEqual(line, await Line());
        await page.Tab.Keyboard.PressAsync("0");
        Assert.Equal(ticks, await Ticks());
        // By the pointer: a frame drawn over a quarter of it.
        await chart.ScrollIntoViewIfNeededAsync();
        var box = (await chart.BoundingBoxAsync())!;
        await page.Tab.Mouse.MoveAsync(box.X + 0.3f * box.Width, box.Y + 0.3f * box.Height);
        await page.Tab.Mouse.DownAsync();
        await page.Tab.Mouse.MoveAsync(box.X + 0.6f * box.Width, box.Y + 0.6f * box.Height, new() { Steps = 4 });
        await page.Tab.Mouse.UpAsync();
        Assert.NotEqual(ticks, await Ticks());
        await page.Picture("zoomed");
        Assert.Empty(page.Complaints);
    }

    [Theory]
    [InlineData("SVG", "<svg")]
    [InlineData("PNG", "PNG")]
    [InlineData("CSV", "load temperature")]
    public async Task PicturesAndNumbersAreTakenAlong(string what, string contains)
    {
        var page = await shared.Get(browser);
        var download = await page.Tab.RunAndWaitForDownloadAsync(() => page.Tab.Locator("#stands-pictures figure").First.Locator($".chart-tools button:text-is('{what}')").ClickAsync());
        Assert.EndsWith("." + what.ToLowerInvariant(), download.SuggestedFilename, StringComparison.Ordinal);
        var bytes = await File.ReadAllBytesAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        Assert.InRange(bytes.Length, 300, 3_000_000);
        Assert.Contains(contains, System.Text.Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);
    }

    [Fact]
    public async Task TheMachineIsChosenByKeys()
    {
        // a page of its own: the values opened here narrow the pictures
        await using var page = await OpenPage.Open(browser);
        // the drawing is made anew when an answer comes
        await page.Settled();
        await page.Tab.Locator("#loop [data-part=recuperator]").FocusAsync();
        await page.Tab.Keyboard.PressAsync("Enter");
        Assert.Equal("recuperator", await page.Tab.InnerTextAsync("#form h2"));
        // Every control can be reached by the tabulator key, and what has the focus is seen.
        for (var i = 0; i < 4; i++) await page.Tab.Keyboard.PressAsync("Tab");
        Assert.NotEqual("BODY", await page.Tab.EvaluateAsync<string>("document.activeElement.tagName"));
        Assert.NotEqual("none", await page.Tab.EvaluateAsync<string>("getComputedStyle(document.activeElement).outlineStyle"));
    }
}
