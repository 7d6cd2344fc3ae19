using Microsoft.Playwright;

namespace Coldwright.Web.Tests;

/// <summary>One Chromium for all tests that look at the page. Where there is none, they are skipped; where it is required (CI), they fail.</summary>
public sealed class Browser : IAsyncLifetime
{
    private static readonly string[] _names = ["chromium", "chromium-browser", "google-chrome"];
    private static readonly string[] _flags = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private IPlaywright? _playwright;

    public IBrowser? Chromium { get; private set; }

    public async ValueTask InitializeAsync()
    {
        if (Find() is not { } path) return;
        _playwright = await Playwright.CreateAsync();
        Chromium = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = path, Args = _flags });
    }

    public async ValueTask DisposeAsync()
    {
        if (Chromium is not null) await Chromium.DisposeAsync();
        _playwright?.Dispose();
    }

    /// <summary>The browser, or the end of the test.</summary>
    public IBrowser Ready
    {
        get
        {
            if (Chromium is null && Environment.GetEnvironmentVariable("COLDWRIGHT_BROWSER") == "required") Assert.Fail("no Chromium was found, and COLDWRIGHT_BROWSER says that it is required");
            Assert.SkipWhen(Chromium is null, "no Chromium on this computer: the page is not looked at");
            return Chromium!;
        }
    }

    private static string? Find() => Environment.GetEnvironmentVariable("COLDWRIGHT_CHROMIUM") is { Length: > 0 } given
        ? given
        : (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).SelectMany(d => _names.Select(n => Path.Combine(d, n))).FirstOrDefault(File.Exists);
}

/// <summary>All tests that share the browser run one after the other.</summary>
[CollectionDefinition(Name)]
public sealed class BrowserTests : ICollectionFixture<Browser>
{
    public const string Name = "browser";
}
