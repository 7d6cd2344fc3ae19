using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;

namespace Coldwright.Web.Tests;

/// <summary>
/// Many tabs for many minutes, each doing what people do, with the server as a process of its own: what is alive after a full collection must level
/// out, and so must the whole of its memory. Started by <c>./bench tabs</c>, not by the tests.
/// </summary>
[Collection(BrowserTests.Name)]
public class TabSoak(Browser browser)
{
    private const double AliveGrowth = 1.05, AliveSlackMegabytes = 2, WholeGrowth = 1.1, WholeSlackMegabytes = 10;
    private const int Samples = 40, Kept = 4;

    private static readonly string[] _views = ["stands", "help", "mixture", "blend", "size", "charge", "cool", "batch", "compare"];

    // What a slider asks while it moves, timed where the person sits.
    private const string TimedTry = """
        async () => {
          const body = JSON.stringify({ changes: [{ place: 'parts/recuperator/conductance', was: null, value: `${60 + Math.round(80 * Math.random())} W/K` }] });
          const from = performance.now();
          const answer = await fetch('/api/try?units=si', { method: 'POST', body, headers: { 'Content-Type': 'application/json', 'X-Coldwright': document.querySelector('meta[name="page-word"]').content } });
          await answer.text();
          return performance.now() - from;
        }
        """;

    // One piece of every kind of work for a machine that nobody has asked about, one after the other.
    private const string EveryKind = """
        async watts => {
          const word = document.querySelector('meta[name="page-word"]').content;
          const changes = [{ place: 'parts/recuperator/conductance', was: null, value: `${watts} W/K` }];
          const orders = { blend: { goal: 'endless', gases: 'nitrogen, methane, propane' }, size: { part: 'vessel' } };
          for (const kind of ['rate', 'safety', 'envelope', 'help', 'blend', 'size', 'charge', 'cooldown', 'batch', 'compare']) {
            const job = await (await fetch('/api/start?units=si', { method: 'POST', body: JSON.stringify({ kind, model: 'cubic', changes, order: orders[kind] ?? {} }), headers: { 'Content-Type': 'application/json', 'X-Coldwright': word } })).json();
            for (;;) {
              const now = (await (await fetch('/api/pulse')).json()).jobs.find(j => j.id === job.id);
              if (now?.state !== 'running' && now?.state !== 'waiting') break;
              await new Promise(r => setTimeout(r, 200));
            }
          }
        }
        """;

    private sealed record Sample(double Minutes, double Whole, double Alive, double Committed, double Threads);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task MemoryLevelsOut()
    {
        var asked = Environment.GetEnvironmentVariable("COLDWRIGHT_TABS");
        Assert.SkipWhen(string.IsNullOrEmpty(asked), "a command of its own: ./bench tabs --count 50 --minutes 10");
        var numbers = asked!.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        var (count, minutes) = ((int)numbers[0], numbers[1]);

        using var cooler = new CoolerCopy();
        using var server = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(CoolerCopy.Root, "artifacts", "bench", "Coldwright.Benchmarks.dll"), "page-host", cooler.Path]) { RedirectStandardOutput = true, RedirectStandardInput = true })!;
        try
        {
            var url = (await server.StandardOutput.ReadLineAsync(Cancel))!;
            await using var context = await browser.Ready.NewContextAsync();
            var tabs = new List<IPage>();
            for (var i = 0; i < count; i++)
            {
                var tab = await context.NewPageAsync();
                tab.SetDefaultTimeout(120_000);
                await tab.GotoAsync(url + "#" + _views[i % _views.Length]);
                tabs.Add(tab);
                if (i > 0) continue;
                // Answers are kept until newer ones push them out: memory can level out only once there are as many as are kept.
                await OpenPage.Ready(tab);
                foreach (var watts in Enumerable.Range(150, Kept)) await tab.EvaluateAsync(EveryKind, watts);
            }
            foreach (var tab in tabs) await OpenPage.Ready(tab);
            var (samples, firstAnswers) = await Use(server, cooler, tabs, minutes);
            foreach (var tab in tabs) Assert.Equal("workshop cooler", await tab.InnerTextAsync("h1"));
            Judge(count, minutes, samples, firstAnswers);
        }
        finally
        {
            server.Kill();
            await server.WaitForExitAsync(CancellationToken.None);
        }
    }

    private static void Judge(int count, double minutes, List<Sample> samples, List<double> firstAnswers)
    {
        // Of what is alive the least counts: work that is being done holds tables that go with it.
        var (early, late) = (samples.Skip(samples.Count / 4).Take(samples.Count / 4).ToArray(), samples.Skip(3 * samples.Count / 4).ToArray());
        var (alive, whole) = ((early.Min(s => s.Alive), late.Min(s => s.Alive)), (Median(early.Select(s => s.Whole)), Median(late.Select(s => s.Whole))));
        bool isLevel = alive.Item2 <= AliveGrowth * alive.Item1 + AliveSlackMegabytes && whole.Item2 <= WholeGrowth * whole.Item1 + WholeSlackMegabytes;
        Say($"{count} tabs, {minutes:0.#} minutes, second quarter and last: alive after a full collection at least {alive.Item1:0.0} and {alive.Item2:0.0} MB, whole process {whole.Item1:0} and {whole.Item2:0} MB");
        Say($"first answers while others work: median {Median(firstAnswers):0} ms, nine of ten within {firstAnswers.Order().ElementAt(9 * (firstAnswers.Count - 1) / 10):0} ms, slowest {firstAnswers.Max():0} ms, {firstAnswers.Count} asked");
        Say($"verdict: memory {(isLevel ? "is level" : "GROWS")}");
        Assert.True(isLevel, FormattableString.Invariant($"memory grows: alive {alive.Item1:0.0} MB, then {alive.Item2:0.0} MB; whole {whole.Item1:0} MB, then {whole.Item2:0} MB"));
    }

    private static async Task<(List<Sample>, List<double>)> Use(Process server, CoolerCopy cooler, List<IPage> tabs, double minutes)
    {
        var (random, watch, samples, firstAnswers, acts) = (new Random(1), Stopwatch.StartNew(), new List<Sample>(), new List<double>(), 0);
        var nextSample = 0.0;
        while (watch.Elapsed.TotalMinutes < minutes)
        {
            var tab = tabs[random.Next(tabs.Count)];
            switch (acts++ % 8)
            {
                case 0:
                    // A value that was not there before: nothing that is kept by revision may be kept for ever.
                    cooler.Machine = cooler.Machine.Replace(Conductance(cooler.Machine), $"conductance: {random.Next(80, 140)} W/K", StringComparison.Ordinal);
                    break;
                case 2:
                    await tab.ReloadAsync();
                    break;
                case 4 or 6:
                    firstAnswers.Add(await tab.EvaluateAsync<double>(TimedTry));
                    break;
                default:
                    await tab.EvaluateAsync("v => { location.hash = v; document.querySelector(`#${v} .go`)?.click(); }", _views[random.Next(_views.Length)]);
                    break;
            }
            await Task.Delay(700, Cancel);
            if (watch.Elapsed.TotalSeconds < nextSample) continue;
            nextSample += Math.Max(3, minutes * 60 / Samples);
            await server.StandardInput.WriteLineAsync();
            await server.StandardInput.FlushAsync(Cancel);
            var told = (await server.StandardOutput.ReadLineAsync(Cancel))!.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
            var s = new Sample(watch.Elapsed.TotalMinutes, told[0], told[1], told[2], told[3]);
            samples.Add(s);
            Say($"{s.Minutes:0.0} min, {acts} acts: whole {s.Whole:0} MB, alive {s.Alive:0.0} MB, kept by the collector {s.Committed:0} MB, {s.Threads:0} threads");
        }
        return (samples, firstAnswers);
    }

    // The recuperator's, the last of the two in the file.
    private static string Conductance(string machine) => machine.Split('\n').Last(l => l.TrimStart().StartsWith("conductance:", StringComparison.Ordinal)).Trim();

    private static void Say(FormattableString text) => TestContext.Current.TestOutputHelper!.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }
}
