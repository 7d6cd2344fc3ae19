namespace Coldwright.Web.Tests;

/// <summary>The token in a browser.</summary>
[Collection(BrowserTests.Name)]
public class TokenTests(Browser browser)
{
    [Fact]
    public async Task IsAskedForTypedAndRemembered()
    {
        await using var page = await OpenPage.Open(browser, token: "0123456789abcdef");
        var url = $"http://127.0.0.1:{new Uri(page.Server.Url).Port}/";
        await page.Tab.GotoAsync(url);
        await page.Picture("door");
        await page.Tab.FillAsync("#token", "nonsense");
        await page.Tab.ClickAsync("button");
        Assert.Contains("That was not it", await page.Tab.InnerTextAsync("main"), StringComparison.Ordinal);
        await page.Tab.FillAsync("#token", "0123456789abcdef");
        await page.Tab.ClickAsync("button");
        await OpenPage.Ready(page.Tab);
        Assert.Equal("workshop cooler", await page.Tab.InnerTextAsync("h1"));
        Assert.Equal(url, page.Tab.Url);
        await page.Tab.ReloadAsync();
        await OpenPage.Ready(page.Tab);
    }

    [Fact]
    public async Task ComesWithThePrintedAddressAndDoesNotStayThere()
    {
        await using var page = await OpenPage.Open(browser, token: "0123456789abcdef");
        var url = $"http://127.0.0.1:{new Uri(page.Server.Url).Port}/";
        await page.Tab.GotoAsync(url + "?token=0123456789abcdef");
        await OpenPage.Ready(page.Tab);
        Assert.DoesNotContain("token", page.Tab.Url, StringComparison.Ordinal);
    }
}
