namespace Coldwright.Web.Tests;

/// <summary>Changes: on the page, in an editor, in both.</summary>
[Collection(BrowserTests.Name)]
public class EditTests(Browser browser)
{
    private const string Length = "parts/recuperator/conductance";

    [Fact]
    public async Task AChangeIsWrittenWithCommentsAndOrderKeptAndItsEffectIsShown()
    {
        await using var page = await OpenPage.Open(browser);
        await page.Settled();
        var (before, cold) = (page.Cooler.Machine, await page.Figure("No-load temperature"));
        var field = await page.Field("recuperator", Length);
        await field.FillAsync("55 W/K");
        await field.PressAsync("Enter");
        await page.Tab.WaitForSelectorAsync("#undo:not([disabled])");
        Assert.Equal(before.Replace("conductance: 100 W/K", "conductance: 55 W/K", StringComparison.Ordinal), page.Cooler.Machine);
        await page.Settled();
        await page.Tab.WaitForFunctionAsync("was => document.querySelector('[data-name=\"No-load temperature\"] .was').textContent === `was ${was}`", cold);
        Assert.True(Kelvin(await page.Figure("No-load temperature")) > Kelvin(cold) + 0.5);

        await page.Tab.ClickAsync("#undo");
        await page.Tab.WaitForSelectorAsync("#redo:not([disabled])");
        Assert.Equal(before, page.Cooler.Machine);
        await page.Tab.ClickAsync("#redo");
        await page.Tab.WaitForSelectorAsync("#redo[disabled]");
        Assert.Contains("conductance: 55 W/K", page.Cooler.Machine, StringComparison.Ordinal);
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task AValueIsChangedAndTakenBackByKeysAlone()
    {
        await using var page = await OpenPage.Open(browser);
        await page.Settled();
        var before = page.Cooler.Machine;
        await page.Tab.FocusAsync("#part-choice");
        for (var i = 0; i < 40 && await page.Tab.InputValueAsync("#part-choice") != "recuperator"; i++) await page.Tab.Keyboard.PressAsync("ArrowDown");
        Assert.Equal("part-choice", await page.Tab.EvaluateAsync<string>("document.activeElement.id"));
        await page.Tab.Keyboard.PressAsync("Enter");
        Assert.StartsWith("recuperator", await page.Tab.EvaluateAsync<string>("document.activeElement.textContent"), StringComparison.Ordinal);
        for (var i = 0; i < 40 && await page.Tab.EvaluateAsync<string?>("document.activeElement.dataset.place ?? null") != "parts/recuperator/conductance"; i++) await page.Tab.Keyboard.PressAsync("Tab");
        await page.Tab.Keyboard.PressAsync("Control+a");
        await page.Tab.Keyboard.TypeAsync("90 W/K");
        await page.Tab.Keyboard.PressAsync("Enter");
        await page.Tab.WaitForSelectorAsync("#undo:not([disabled])");
        Assert.Contains("conductance: 90 W/K", page.Cooler.Machine, StringComparison.Ordinal);
        // In a field the key takes back what was typed there; on the slider beside it, the change of the file.
        await page.Tab.Keyboard.PressAsync("Tab");
        await page.Tab.Keyboard.PressAsync("Control+z");
        await page.Tab.WaitForSelectorAsync("#undo[disabled]", new() { State = Microsoft.Playwright.WaitForSelectorState.Attached });
        Assert.Equal(before, page.Cooler.Machine);
        await page.Tab.Keyboard.PressAsync("Control+y");
        await page.Tab.WaitForSelectorAsync("#undo:not([disabled])");
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task ASliderTriesOutAndWritesOnlyWhenLetGo()
    {
        await using var page = await OpenPage.Open(browser);
        await page.Settled();
        var before = page.Cooler.Machine;
        var field = await page.Field("recuperator", Length);
        var slider = field.Locator("xpath=following-sibling::input[@type='range']");
        await slider.EvaluateAsync("s => { s.value = -60; s.dispatchEvent(new Event('input')); }");
        await page.Tab.WaitForFunctionAsync("() => document.getElementById('now-source').dataset.state === 'trial' && document.getElementById('now-source').textContent.startsWith('Tried out')");
        Assert.Equal(before, page.Cooler.Machine);
        Assert.Equal("66 W/K", await field.InputValueAsync());
        await slider.EvaluateAsync("s => s.dispatchEvent(new Event('change'))");
        await page.Tab.WaitForSelectorAsync("#undo:not([disabled])");
        Assert.Contains("conductance: 66 W/K", page.Cooler.Machine, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AWrongValueIsRefusedWithTheReason()
    {
        await using var page = await OpenPage.Open(browser);
        var before = page.Cooler.Machine;
        var field = await page.Field("operation", "operation/high-pressure");
        await field.FillAsync("17 bar");
        await field.PressAsync("Enter");
        await page.Tab.WaitForSelectorAsync("[data-notice=edit]");
        Assert.Contains("barg", await page.Tab.InnerTextAsync("[data-notice=edit]"), StringComparison.Ordinal);
        await page.Tab.WaitForSelectorAsync("[data-place='operation/high-pressure'][aria-invalid=true]");
        Assert.Equal("17 bar", await field.InputValueAsync());
        Assert.Equal(before, page.Cooler.Machine);
    }

    [Fact]
    public async Task AnEditInAnEditorShowsOnThePageAndInEveryTab()
    {
        await using var page = await OpenPage.Open(browser);
        var other = await page.Another();
        page.Cooler.Machine = page.Cooler.Machine.Replace("name: workshop cooler", "name: cellar cooler", StringComparison.Ordinal);
        foreach (var tab in (Microsoft.Playwright.IPage[])[page.Tab, other])
        {
            await tab.BringToFrontAsync();
            await tab.WaitForFunctionAsync("() => document.querySelector('h1').textContent === 'cellar cooler'");
            await tab.WaitForSelectorAsync("[data-notice=outside]");
        }
    }

    [Fact]
    public async Task ConflictingEditsLoseNothing()
    {
        await using var page = await OpenPage.Open(browser);
        var field = await page.Field("recuperator", Length);
        await field.FillAsync("55 W/K");
        // The editor saves before the page has looked again; another of its changes is elsewhere in the file.
        page.Cooler.Machine = page.Cooler.Machine.Replace("conductance: 100 W/K", "conductance: 130 W/K", StringComparison.Ordinal).Replace("approach: 6 K", "approach: 7 K", StringComparison.Ordinal);
        await field.EvaluateAsync("i => { i.dataset.was = '100 W/K'; i.dispatchEvent(new Event('change')); }");
        await page.Tab.WaitForSelectorAsync("[data-notice=clash]");
        var said = await page.Tab.InnerTextAsync("[data-notice=clash]");
        Assert.Contains("130 W/K", said, StringComparison.Ordinal);
        Assert.Contains("55 W/K", said, StringComparison.Ordinal);
        Assert.Contains("conductance: 130 W/K", page.Cooler.Machine, StringComparison.Ordinal);
        await page.Tab.ClickAsync("text=Write mine");
        await page.Tab.WaitForSelectorAsync("#undo:not([disabled])");
        Assert.Contains("conductance: 55 W/K", page.Cooler.Machine, StringComparison.Ordinal);
        Assert.Contains("approach: 7 K", page.Cooler.Machine, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AWrongFileIsToldWithItsLinesAndMendedWithoutLoadingAgain()
    {
        await using var page = await OpenPage.Open(browser);
        var good = page.Cooler.Machine;
        page.Cooler.Machine = good.Replace("length: 16 m", "lenght: 16 m", StringComparison.Ordinal);
        await page.Tab.WaitForSelectorAsync("[data-notice=problems]");
        Assert.Contains("the nearest is 'length'", await page.Tab.InnerTextAsync("[data-notice=problems]"), StringComparison.Ordinal);
        // What is not known is not called safe.
        Assert.Matches("Safety, as the files were before: .*caution", await page.Tab.InnerTextAsync("#findings-line"));
        Assert.Equal("workshop cooler", await page.Tab.InnerTextAsync("h1"));
        page.Cooler.Machine = ": : {";
        await page.Tab.WaitForFunctionAsync("() => document.querySelector('[data-notice=problems]').textContent.includes('YAML')");
        var stranger = await page.Another();
        Assert.Contains("Safety not known while the files have problems", await stranger.InnerTextAsync("#findings-line"), StringComparison.Ordinal);
        await stranger.CloseAsync();
        page.Cooler.Machine = good;
        await page.Tab.WaitForSelectorAsync("[data-notice=problems]", new() { State = Microsoft.Playwright.WaitForSelectorState.Detached });
        await page.Settled();
        Assert.DoesNotContain(page.Complaints, c => !c.Contains("422", StringComparison.Ordinal));
    }

    private static double Kelvin(string text) => double.Parse(text.Split('\u00a0', ' ')[0], System.Globalization.CultureInfo.InvariantCulture);
}
