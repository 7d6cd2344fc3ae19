using Microsoft.Playwright;

namespace Coldwright.Web.Tests;

/// <summary>What plans a cooler: a better mixture, sizes, filling. Opened, changed, read, stopped, written into the file.</summary>
[Collection(BrowserTests.Name)]
public class PlanTests(Browser browser)
{
    [Fact]
    public async Task ABetterMixtureIsFoundChangedByAFieldAndWritten()
    {
        await using var page = await OpenPage.Open(browser, "blend");
        await page.Tab.SelectOptionAsync("#blend [data-order=goal]", "endless");
        await page.Tab.UncheckAsync("#blend [data-gases] input[value=ethane]");
        await page.Tab.UncheckAsync("#blend [data-gases] input[value=isobutane]");
        await page.Tab.ClickAsync("#blend .go");
        await page.Tab.WaitForSelectorAsync("#blend .work-progress:not([hidden])");
        var first = await Answer(page, "blend");
        Assert.Contains("J/mol", first, StringComparison.Ordinal);
        Assert.Contains("propane", first, StringComparison.Ordinal);
        Assert.DoesNotContain("isobutane", first, StringComparison.Ordinal);
        await page.IsFitToRead("blend");
        await page.WholePictures("blend-done");

        await page.Tab.UncheckAsync("#blend [data-gases] input[value=propane]");
        await page.Tab.ClickAsync("#blend .go");
        var second = await Answer(page, "blend", first);
        Assert.DoesNotContain("propane", second, StringComparison.Ordinal);

        await page.Tab.ClickAsync("#blend .work-take button");
        await page.Tab.WaitForSelectorAsync("#undo:not([disabled])");
        Assert.Matches("mixture: \"?nitrogen 0\\.\\d+, methane 0\\.\\d+\"?\n", page.Cooler.Machine);
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task ASearchThatIsStoppedKeepsTheBestSoFar()
    {
        await using var page = await OpenPage.Open(browser, "blend");
        await page.Tab.SelectOptionAsync("#blend .by", "reference");
        await page.Tab.ClickAsync("#blend .go");
        await page.Tab.WaitForFunctionAsync("() => /generation|rating|[0-9]+ s/.test(document.querySelector('#blend .stage').textContent)");
        await Task.Delay(4000, TestContext.Current.CancellationToken);
        await page.Tab.ClickAsync("#blend .stop");
        await page.Tab.WaitForFunctionAsync("() => /best so far|Stopped/.test(document.querySelector('#blend .work-age').textContent)", null, new() { Timeout = 60000 });
        Assert.True(await page.Tab.IsEnabledAsync("#blend .go"));
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task APartIsSizedForAnotherTargetAndWritten()
    {
        await using var page = await OpenPage.Open(browser, "size");
        await page.Tab.SelectOptionAsync("#size [data-order=part]", "vessel");
        Assert.Contains("0.6 L", await page.Tab.InnerTextAsync("#size [data-targets]"), StringComparison.Ordinal);
        await page.Tab.ClickAsync("#size .go");
        var first = await Answer(page, "size");
        await page.Tab.FillAsync("#size [data-order=target]", "0.9 L");
        await page.Tab.PressAsync("#size [data-order=target]", "Enter");
        var second = await Answer(page, "size", first);
        Assert.NotEqual(first, second);
        Assert.Contains("900", await page.Tab.InnerTextAsync("#size .work-result"), StringComparison.Ordinal);
        Assert.True(await page.Tab.Locator("#size .work-result table").CountAsync() > 1);
        await page.IsFitToRead("size");
        await page.WholePictures("size-done");
        await page.Tab.ClickAsync("#size .work-take button");
        await page.Tab.WaitForSelectorAsync("#undo:not([disabled])");
        Assert.DoesNotContain("tube: 2-1/8 in type L", page.Cooler.Machine, StringComparison.Ordinal);
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task TheFillingIsPlannedAndToppedUpAfterALeak()
    {
        await using var page = await OpenPage.Open(browser, "charge");
        await page.Tab.ClickAsync("#charge summary");
        await page.Tab.CheckAsync("#charge [data-order=warm-only]");
        await page.Tab.ClickAsync("#charge .go");
        var first = await Answer(page, "charge");
        Assert.Contains("Gas after gas", await page.Tab.InnerTextAsync("#charge .work-result"), StringComparison.Ordinal);
        Assert.DoesNotContain("Topping up", await page.Tab.InnerTextAsync("#charge .work-result"), StringComparison.Ordinal);
        await page.Tab.FillAsync("#charge [data-order=lost]", "40 g");
        await page.Tab.ClickAsync("#charge .go");
        await page.Tab.WaitForFunctionAsync("() => document.querySelector('#charge .work-result').textContent.includes('Topping up')", null, new() { Timeout = 60000 });
        await page.Tab.FillAsync("#charge [data-order=mass]", "250 g");
        await page.Tab.ClickAsync("#charge .go");
        Assert.NotEqual(first, await Answer(page, "charge", first));
        await page.IsFitToRead("charge");
        await page.WholePictures("charge-done");
        Assert.Empty(page.Complaints);
    }

    [Theory]
    [InlineData("size", "target", "5 parsec", "parsec")]
    [InlineData("charge", "mass", "300", "unit")]
    [InlineData("blend", "at", "17 barg", "temperature")]
    public async Task AWrongFieldIsRefusedInWords(string view, string field, string text, string said)
    {
        await using var page = await OpenPage.Open(browser, view);
        await page.Tab.FillAsync($"#{view} [data-order={field}]", text);
        await page.Tab.ClickAsync($"#{view} .go");
        await page.Tab.WaitForFunctionAsync("v => document.querySelector(`#${v} .work-age`).textContent.startsWith('Not begun:')", view);
        Assert.Contains(said, await page.Tab.InnerTextAsync($"#{view} .work-age"), StringComparison.Ordinal);
    }

    // The verdict of the answer that is shown, once it is another than the one before.
    private static async Task<string> Answer(OpenPage page, string view, string before = "")
    {
        await page.Tab.WaitForFunctionAsync("([view, before]) => { const v = document.querySelector(`#${view} .work-result .verdict`); return v && v.textContent !== before; }", new[] { view, before }, new() { Timeout = 90000 });
        return await page.Tab.Locator($"#{view} .work-result .verdict").First.TextContentAsync() ?? "";
    }
}
