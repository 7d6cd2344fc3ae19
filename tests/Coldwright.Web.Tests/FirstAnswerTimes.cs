using System.Globalization;
using Microsoft.Playwright;

namespace Coldwright.Web.Tests;

/// <summary>
/// How long it takes from a slider's move to the figures on the screen, with the server as a process of its own. Prints times and fails at none.
/// Started by <c>./bench first</c>, not by the tests.
/// </summary>
[Collection(BrowserTests.Name)]
public class FirstAnswerTimes(Browser browser)
{
    private const int Moves = 25;

    // One move of a slider: until the line under the figures says who has answered, and one more frame is drawn.
    private const string Move = """
        async ([place, at]) => {
          const slider = document.querySelector(`[data-place="${place}"]`).closest('.field').querySelector('input[type=range]');
          const source = document.getElementById('now-source');
          const from = performance.now();
          await new Promise(done => {
            const watch = new MutationObserver(() => { if (source.dataset.state === 'trial') { watch.disconnect(); requestAnimationFrame(done); } });
            watch.observe(source, { childList: true, characterData: true, subtree: true });
            slider.value = at;
            slider.dispatchEvent(new Event('input'));
          });
          const seen = performance.now() - from;
          const said = source.textContent.match(/(\d+) ms/);
          return [seen, said ? Number(said[1]) : 5, source.textContent.includes('slopes') ? 1 : 0];
        }
        """;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("workshop", "recuperator", "parts/recuperator/conductance", "between given pressures")]
    [InlineData("closed-loop", "recuperator", "parts/recuperator/length", "closed loop, a length: along the slopes")]
    [InlineData("closed-loop", "compressor", "parts/compressor/gas-volume", "closed loop, a volume that has no slope: between the pressures of the file")]
    public async Task ArePrinted(string example, string part, string place, string what)
    {
        Assert.SkipWhen(string.IsNullOrEmpty(Environment.GetEnvironmentVariable("COLDWRIGHT_FIRST")), "a command of its own: ./bench first");
        using var cooler = new CoolerCopy(example);
        await using var host = await HostedPage.Start(cooler, Cancel);
        await using var context = await browser.Ready.NewContextAsync(new() { ViewportSize = new() { Width = OpenPage.Desktop, Height = 860 } });
        var tab = await context.NewPageAsync();
        var watch = System.Diagnostics.Stopwatch.StartNew();
        await tab.GotoAsync(host.Url);
        await tab.WaitForSelectorAsync("#now-figures .value");
        var opened = watch.Elapsed.TotalMilliseconds;
        await tab.WaitForSelectorAsync("#now-source[data-state=settled]", new() { Timeout = 180_000 });
        var settled = watch.Elapsed.TotalSeconds;
        await tab.SelectOptionAsync("#part-choice", part);
        var (seen, worked, slopes) = (new List<double>(), new List<double>(), 0);
        for (var i = 0; i < Moves; i++)
        {
            var told = await tab.EvaluateAsync<double[]>(Move, new object[] { place, i % 2 == 0 ? 1 + i : -1 - i });
            seen.Add(told[0]);
            worked.Add(told[1]);
            slopes += (int)told[2];
        }
        TestContext.Current.TestOutputHelper!.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{example}, {what}: worked out in {At(worked, 0.5):0} ms, on the screen after {At(seen, 0.5):0} ms, nine of ten within {At(seen, 0.9):0} ms ({Moves} moves, {slopes} along slopes); opened with figures in {opened:0} ms, settled in {settled:0.0} s"));
    }

    private static double At(List<double> values, double share) => values.Order().ElementAt((int)(share * (values.Count - 1)));
}
