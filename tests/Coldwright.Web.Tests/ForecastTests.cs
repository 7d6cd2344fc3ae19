using System.Globalization;
using System.Text.RegularExpressions;

namespace Coldwright.Web.Tests;

/// <summary>A cooler whose pressures follow from hardware and charge: a moved value is answered at once along the slopes, then by the closed loop.</summary>
[Collection(BrowserTests.Name)]
public partial class ForecastTests(Browser browser)
{
    private const string Length = "parts/throttle/capillary/length";
    private const int Patience = 180_000;

    [GeneratedRegex(@"[-−]?\d+(\.\d+)?")]
    private static partial Regex Number();

    [Fact]
    public async Task AMovedValueIsForecastAndTheClosedAnswerReplacesIt()
    {
        await using var page = await OpenPage.Open(browser, example: "closed-loop");
        Assert.Contains("between the two pressures of the file", await page.Tab.InnerTextAsync("#now-source"), StringComparison.Ordinal);
        await page.Settled(Patience);
        await page.Picture("closed-settled");
        var settled = Value(await page.Figure("No-load temperature"));
        Assert.Contains("pressures from hardware and charge", await page.Tab.InnerTextAsync("#now-source"), StringComparison.Ordinal);

        // Not written yet: figures along the slopes, marked as such.
        var field = await page.Field("throttle", Length);
        var slider = field.Locator("xpath=following-sibling::input[@type='range']");
        await slider.EvaluateAsync("s => { s.value = 7; s.dispatchEvent(new Event('input')); }");
        await page.Tab.WaitForFunctionAsync("() => document.getElementById('now-source').dataset.state === 'trial' && document.getElementById('now-source').textContent.includes('along the slopes')");
        await page.IsAccessible();
        await page.Picture("closed-forecast");
        Assert.StartsWith("≈", await page.Figure("No-load temperature"), StringComparison.Ordinal);
        var forecast = Value(await page.Figure("No-load temperature"));
        Assert.NotEqual(settled, forecast);
        Assert.Contains("length of the capillary", await page.Tab.InnerTextAsync("#stands-answer .verdict"), StringComparison.Ordinal);

        // Let go: the same at once, then the loop closed anew in its place.
        await slider.EvaluateAsync("s => s.dispatchEvent(new Event('change'))");
        await page.Tab.WaitForFunctionAsync("() => document.getElementById('now-source').dataset.state === 'first' && document.getElementById('now-source').textContent.includes('along the slopes')");
        await page.Settled(Patience);
        var closed = Value(await page.Figure("No-load temperature"));
        Assert.False((await page.Figure("No-load temperature")).StartsWith('≈'));
        // A step of a twentieth on a slope: the forecast is nearer to the closed answer than the answer before, or as near as its last digit shows.
        Assert.True(Math.Abs(forecast - closed) <= Math.Max(0.11, Math.Abs(settled - closed)), $"before {settled} K, forecast {forecast} K, closed {closed} K");

        // What would help is known with the closed answer.
        await page.Tab.EvaluateAsync("location.hash = 'help'");
        await page.Tab.WaitForSelectorAsync("#help .work-result figure");
        Assert.Contains("By the reference model", await page.Tab.InnerTextAsync("#help .work-age"), StringComparison.Ordinal);

        // Where it will freeze is told for what circulates, not for what was let in.
        await page.Tab.EvaluateAsync("location.hash = 'mixture'");
        await page.Tab.WaitForFunctionAsync("() => document.getElementById('freezing').textContent.includes('By the reference model, for the mixture that circulates')");

        // All of it to a reader of Fahrenheit.
        await page.Tab.SelectOptionAsync("#units", "us");
        await page.Tab.EvaluateAsync("location.hash = 'stands'");
        await page.Tab.WaitForFunctionAsync("() => document.querySelector('#stands-answer .verdict').textContent.includes('°F')");
        await page.Settled(Patience);
        Assert.Empty(await page.SiLines("main"));
        Assert.Empty(page.Complaints);
    }

    private static double Value(string text) => double.Parse(Number().Match(text).Value.Replace('−', '-'), CultureInfo.InvariantCulture);
}
