using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;

namespace Coldwright.Web.Tests;

/// <summary>Many tabs for many minutes, each doing what people do, with the server as a process of its own: its memory must level out. Started by <c>./bench tabs</c>, not by the tests.</summary>
[Collection(BrowserTests.Name)]
public class TabSoak(Browser browser)
{
    private static readonly string[] _views = ["stands", "mixture", "cool", "batch", "compare", "help"];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task MemoryLevelsOut()
    {
        var asked = Environment.GetEnvironmentVariable("COLDWRIGHT_TABS");
        Assert.SkipWhen(string.IsNullOrEmpty(asked), "a command of its own: ./bench tabs --count 50 --minutes 10");
        var numbers = asked!.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        var (count, minutes) = ((int)numbers[0], numbers[1]);

        using var cooler = new CoolerCopy();
        using var server = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(CoolerCopy.Root, "artifacts", "cli", "coldwright.dll"), "page", cooler.Path, "--no-browser"]) { RedirectStandardOutput = true })!;
        try
        {
            var url = (await server.StandardOutput.ReadLineAsync(Cancel))!.Split(": ", 2)[1];
            await using var context = await browser.Ready.NewContextAsync();
            var tabs = new List<IPage>();
            for (var i = 0; i < count; i++)
            {
                var tab = await context.NewPageAsync();
                tab.SetDefaultTimeout(120_000);
                await tab.GotoAsync(url + "#" + _views[i % _views.Length]);
                tabs.Add(tab);
            }
            foreach (var tab in tabs) await OpenPage.Ready(tab);
            var megabytes = await Use(server, cooler, tabs, minutes);
            var (early, late) = (Median(megabytes.Skip(megabytes.Count / 4).Take(megabytes.Count / 4)), Median(megabytes.Skip(3 * megabytes.Count / 4)));
            Say($"{count} tabs, {minutes:0.#} minutes: {early:0} MB in the second quarter, {late:0} MB in the last");
            Assert.True(late < 1.15 * early + 10, $"memory grows: {early:0} MB, then {late:0} MB");
            foreach (var tab in tabs) Assert.Equal("workshop cooler", await tab.InnerTextAsync("h1"));
        }
        finally
        {
            server.Kill();
            await server.WaitForExitAsync(CancellationToken.None);
        }
    }

    private static async Task<List<double>> Use(Process server, CoolerCopy cooler, List<IPage> tabs, double minutes)
    {
        var (random, watch, megabytes, acts) = (new Random(1), Stopwatch.StartNew(), new List<double>(), 0);
        var nextSample = 0.0;
        while (watch.Elapsed.TotalMinutes < minutes)
        {
            var tab = tabs[random.Next(tabs.Count)];
            switch (acts++ % 8)
            {
                case 0:
                    cooler.Machine = cooler.Machine.Replace("conductance: 100 W/K", "conductance: 101 W/K", StringComparison.Ordinal);
                    break;
                case 4:
                    cooler.Machine = cooler.Machine.Replace("conductance: 101 W/K", "conductance: 100 W/K", StringComparison.Ordinal);
                    break;
                case 2:
                    await tab.ReloadAsync();
                    break;
                default:
                    await tab.EvaluateAsync("v => { location.hash = v; document.querySelector(`#${v} .go`)?.click(); }", _views[random.Next(_views.Length)]);
                    break;
            }
            await Task.Delay(700, Cancel);
            if (watch.Elapsed.TotalSeconds < nextSample) continue;
            nextSample += Math.Max(2, minutes * 60 / 40);
            server.Refresh();
            megabytes.Add(server.WorkingSet64 / 1e6);
            Say($"{watch.Elapsed.TotalMinutes:0.0} min, {acts} acts: {megabytes[^1]:0} MB, {server.Threads.Count} threads");
        }
        return megabytes;
    }

    private static void Say(FormattableString text) => TestContext.Current.TestOutputHelper!.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }
}
