using System.Net;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Coldwright.Web.Tests;

/// <summary>A cooler's copy, its server and a tab that shows it; everything the tab complained about is kept.</summary>
internal sealed partial class OpenPage : IAsyncDisposable
{
    public const int Desktop = 1280, Phone = 390;

    private readonly List<string> _complaints = [], _addresses = [];

    private OpenPage(CoolerCopy cooler, PageServer server, IBrowserContext context, IPage tab) => (Cooler, Server, Context, Tab) = (cooler, server, context, tab);

    public CoolerCopy Cooler { get; }
    public PageServer Server { get; }
    public IBrowserContext Context { get; private set; }
    public IPage Tab { get; }

    /// <summary>Errors of scripts and requests.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    /// <summary>Every address that the tab asked for.</summary>
    public IReadOnlyList<string> Addresses => _addresses;

    public static async Task<OpenPage> Open(Browser browser, string view = "", int width = Desktop, string example = "workshop", string? token = null)
    {
        var chromium = browser.Ready;
        var cooler = new CoolerCopy(example);
        var server = await PageServer.Start(new PageOptions { Directory = cooler.Path, Address = token is null ? IPAddress.Loopback : IPAddress.Any, Token = token });
        var context = await chromium.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = width == Phone ? 844 : 860 }, ColorScheme = ColorScheme.Light, AcceptDownloads = true });
        var page = new OpenPage(cooler, server, context, await context.NewPageAsync());
        page.Listen(page.Tab);
        if (token is null) await page.GoTo(view);
        return page;
    }

    public async Task GoTo(string view)
    {
        await Tab.GotoAsync(Server.Url + (view == "" ? "" : $"#{view}"));
        await Ready(Tab);
    }

    /// <summary>Another tab on the same page.</summary>
    public async Task<IPage> Another(string view = "")
    {
        var tab = await Context.NewPageAsync();
        Listen(tab);
        await tab.GotoAsync(Server.Url + (view == "" ? "" : $"#{view}"));
        await Ready(tab);
        return tab;
    }

    /// <summary>A tab of somebody whose browser remembers nothing.</summary>
    public async Task<IPage> NewVisitor(Browser browser, string view)
    {
        Context = await browser.Ready.NewContextAsync();
        return await Another(view);
    }

    public static Task Ready(IPage tab) => tab.WaitForSelectorAsync("body[data-ready]");

    /// <summary>Waits until the reference model has answered; when it does not, tells what the page says instead.</summary>
    /// <param name="patienceMs">How long, ms.</param>
    public async Task Settled(int patienceMs = 60_000)
    {
        try
        {
            await Tab.WaitForSelectorAsync("#now-source[data-state=settled]", new() { Timeout = patienceMs });
        }
        catch (TimeoutException)
        {
            Assert.Fail($"not settled after {patienceMs / 1000} s; the page says: {await Tab.InnerTextAsync("#now")}; complaints: {string.Join("; ", _complaints)}; work: {await Tab.EvaluateAsync<string>("fetch('/api/pulse').then(r => r.text())")}");
        }
    }

    /// <summary>A figure of the row that never leaves, as text.</summary>
    public Task<string> Figure(string name) => Tab.InnerTextAsync($"[data-name='{name}'] .value");

    /// <summary>Opens the values of a part and gives the field of one.</summary>
    public async Task<ILocator> Field(string part, string place)
    {
        await Tab.SelectOptionAsync("#part-choice", part);
        return Tab.Locator($"[data-place='{place}']");
    }

    /// <summary>What breaks the rules of axe-core for WCAG 2.1, levels A and AA.</summary>
    /// <param name="place">Selector of the part of the page that is looked at; null: all of it.</param>
    /// <param name="contrastAlone">True to look at nothing but contrast, which is what another colour scheme can break.</param>
    public async Task<IReadOnlyList<string>> AccessFaults(string? place = null, bool contrastAlone = false)
    {
        var rules = new AxeRunOptions { RunOnly = contrastAlone ? new() { Type = "rule", Values = ["color-contrast"] } : new() { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa"] } };
        var found = await (place is null ? Tab.RunAxe(rules) : Tab.Locator(place).RunAxe(rules));
        return [.. found.Violations.Select(v => $"{v.Id}: {v.Help} ({string.Join(", ", v.Nodes.Take(3).Select(n => n.Html[..Math.Min(n.Html.Length, 160)]))})")];
    }

    /// <summary>
    /// Lines of a place that speak of kelvin, bar or degrees Celsius to a reader who chose US units. The kelvins beside a Fahrenheit may stay
    /// (in brackets, or alone in a cell), and so may the caloric zero, sources, the machine file's own text, and the notes of parts about themselves.
    /// </summary>
    public async Task<IReadOnlyList<string>> SiLines(string place)
    {
        var text = await Tab.Locator(place).InnerTextAsync();
        return [.. text.Split('\n', '\t').Where(l => SiAmount().IsMatch(KelvinBeside().Replace(l.Trim(), "")) && !AllowedSi().IsMatch(l))];
    }

    [GeneratedRegex(@"[0-9]\s(K|bar|kPa|MPa|°C)\b(?!/)")]
    private static partial Regex SiAmount();

    [GeneratedRegex(@"\([−-]?[0-9.]+\sK\)|^[−-]?[0-9.]+\sK$")]
    private static partial Regex KelvinBeside();

    [GeneratedRegex("ideal gas at 300 K|^Source: |^(compressor|coil|vessel|buffer): ")]
    private static partial Regex AllowedSi();

    /// <summary>Fails with all that breaks those rules.</summary>
    public async Task IsAccessible()
    {
        var faults = await AccessFaults();
        if (faults.Count > 0) Assert.Fail(string.Join(Environment.NewLine, faults));
    }

    /// <summary>An answer of long work: a table and tools with every picture, no broken rule of accessibility, a line that says by whom and when.</summary>
    public async Task IsFitToRead(string view)
    {
        var figures = await Tab.Locator($"#{view} .work-result figure").AllAsync();
        Assert.NotEmpty(figures);
        foreach (var figure in figures)
        {
            Assert.True(await figure.Locator("xpath=ancestor-or-self::section[1]//table").CountAsync() > 0);
            Assert.Equal(1, await figure.Locator(".chart-tools button:text-is('CSV')").CountAsync());
        }
        var faults = await AccessFaults($"#{view}");
        if (faults.Count > 0) Assert.Fail(string.Join(Environment.NewLine, faults));
        Assert.StartsWith("By the cubic model, asked at", await Tab.InnerTextAsync($"#{view} .work-age"), StringComparison.Ordinal);
        Assert.Contains("until the program ends", await Tab.InnerTextAsync($"#{view} .kept"), StringComparison.Ordinal);
    }

    /// <summary>Keeps pictures of the whole length of the page at both widths.</summary>
    public async Task WholePictures(string name)
    {
        foreach (var width in (int[])[Desktop, Phone])
        {
            await Tab.SetViewportSizeAsync(width, width == Phone ? 844 : 860);
            await Picture($"{name}-{width}", isWhole: true);
            var wider = await Tab.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth");
            Assert.True(wider <= 0, $"{name} is {wider} px wider than a screen of {width} px");
        }
        await Tab.SetViewportSizeAsync(Desktop, 860);
    }

    /// <summary>Keeps a picture for the eyes: artifacts/page.</summary>
    public async Task Picture(string name, bool isWhole = false)
    {
        var folder = Path.Combine(CoolerCopy.Root, "artifacts", "page");
        Directory.CreateDirectory(folder);
        await Tab.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}.png"), FullPage = isWhole });
    }

    public async ValueTask DisposeAsync()
    {
        await Context.CloseAsync();
        await Server.DisposeAsync();
        Cooler.Dispose();
    }

    private void Listen(IPage tab)
    {
        tab.PageError += (_, error) => _complaints.Add(error);
        tab.Console += (_, message) =>
        {
            // A picture taken by the test puts a style of its own into the page, which the page's rules refuse.
            if (message.Type == "error" && !message.Text.Contains("inline style", StringComparison.Ordinal)) _complaints.Add(message.Text);
        };
        tab.Request += (_, request) => _addresses.Add(request.Url);
    }
}
