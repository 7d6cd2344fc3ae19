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
    // Said before anything is measured: the median of the last quarter of the time against that of the second.
    private const double Growth = 1.15, SlackMB = 5;
    private const int Quarters = 4, SamplesOfAQuarter = 20, Kept = 4, ActsBetweenChanges = 16;

    private static readonly TimeSpan _pace = TimeSpan.FromSeconds(1), _patience = TimeSpan.FromSeconds(30), _opening = TimeSpan.FromMinutes(5);
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

    private readonly List<HostedPage.Holding>[] _samples = [[], [], [], []];
    private readonly List<double> _firstAnswers = [];
    private int _acts, _late;
    private double _answeredBefore;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task MemoryLevelsOut()
    {
        var asked = Environment.GetEnvironmentVariable("COLDWRIGHT_TABS");
        Assert.SkipWhen(string.IsNullOrEmpty(asked), "a command of its own: ./bench tabs --count 50 --minutes 10");
        var numbers = asked!.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        var (count, minutes) = ((int)numbers[0], numbers[1]);
        Say($"level means: the median of the last quarter is at most {Growth} times that of the second and {SlackMB} MB, alive and whole");

        using var cooler = new CoolerCopy();
        await using var host = await HostedPage.Start(cooler, Cancel);
        await using var context = await browser.Ready.NewContextAsync();
        var tabs = await Open(context, host.Url, count);
        var opened = await host.Tell(Cancel);
        _answeredBefore = opened.Answered;
        Say($"{tabs.Count} tabs are open: {opened}");
        await Use(host, cooler, tabs, minutes);
        foreach (var tab in tabs) await InTime(async () => Assert.Equal("workshop cooler", await tab.InnerTextAsync("h1")));
        Judge(count, minutes, tabs.Count);
    }

    private async Task<List<IPage>> Open(IBrowserContext context, string url, int count)
    {
        var (tabs, watch) = (new List<IPage>(), Stopwatch.StartNew());
        while (tabs.Count < count && watch.Elapsed < _opening)
        {
            var tab = await context.NewPageAsync();
            tab.SetDefaultTimeout((float)_patience.TotalMilliseconds);
            await tab.GotoAsync($"{url}#{_views[tabs.Count % _views.Length]}", new() { WaitUntil = WaitUntilState.Commit, Timeout = (float)_opening.TotalMilliseconds });
            tabs.Add(tab);
            if (tabs.Count > 1) continue;
            // Answers are kept until newer ones push them out: memory can level out only once there are as many as are kept.
            await OpenPage.Ready(tab);
            foreach (var watts in Enumerable.Range(150, Kept)) await InTime(() => tab.EvaluateAsync(EveryKind, watts), 4);
        }
        foreach (var tab in tabs) await InTime(() => OpenPage.Ready(tab));
        return tabs;
    }

    private async Task Use(HostedPage host, CoolerCopy cooler, List<IPage> tabs, double minutes)
    {
        var (random, watch, all) = (new Random(1), Stopwatch.StartNew(), TimeSpan.FromMinutes(minutes));
        while (watch.Elapsed < all)
        {
            await Act(cooler, tabs[random.Next(tabs.Count)], random);
            await Task.Delay(_pace, Cancel);
            var quarter = Math.Min(Quarters - 1, (int)(Quarters * (watch.Elapsed / all)));
            if (_samples[quarter].Count >= SamplesOfAQuarter * (Quarters * (watch.Elapsed / all) - quarter)) continue;
            _samples[quarter].Add(await host.Tell(Cancel));
            if (_samples[quarter].Count % 5 == 0) Say($"{watch.Elapsed.TotalMinutes:0.0} min, {_acts} acts, {_late} late: {_samples[quarter][^1]}");
        }
    }

    private async Task Act(CoolerCopy cooler, IPage tab, Random random)
    {
        switch (_acts++ % ActsBetweenChanges)
        {
            case 0:
                // A value that was not there before: nothing that is kept by revision may be kept for ever.
                cooler.Machine = cooler.Machine.Replace(Conductance(cooler.Machine), $"conductance: {random.Next(800, 1400) / 10.0:0.0} W/K", StringComparison.Ordinal);
                break;
            case 2 or 10:
                await InTime(() => tab.ReloadAsync(new() { WaitUntil = WaitUntilState.Commit }));
                break;
            case 4 or 6 or 8 or 12 or 14:
                await InTime(async () => _firstAnswers.Add(await tab.EvaluateAsync<double>(TimedTry)));
                break;
            default:
                await InTime(() => tab.EvaluateAsync("v => { location.hash = v; document.querySelector(`#${v} .go`)?.click(); }", _views[random.Next(_views.Length)]));
                break;
        }
    }

    // A busy computer may keep a tab waiting: that is counted, and the others go on.
    private async Task InTime(Func<Task> act, int times = 1)
    {
        try
        {
            await act().WaitAsync(times * _patience, Cancel);
        }
        catch (Exception e) when (e is TimeoutException or PlaywrightException)
        {
            _late++;
        }
    }

    private void Judge(int count, double minutes, int open)
    {
        Assert.All(_samples, s => Assert.NotEmpty(s));
        var before = _answeredBefore;
        for (var q = 0; q < Quarters; q++)
        {
            var s = _samples[q];
            Say($"quarter {q + 1}: alive {Of(q, h => h.AliveMB):0.0} MB ({s.Min(h => h.AliveMB):0.0} to {s.Max(h => h.AliveMB):0.0}), whole {Of(q, h => h.WholeMB):0} MB ({s.Min(h => h.WholeMB):0} to {s.Max(h => h.WholeMB):0}), {s[^1].Answered - before:0} requests answered");
            before = s[^1].Answered;
        }
        if (_firstAnswers.Count > 0) Say($"first answers while others work: median {Median(_firstAnswers):0} ms, nine of ten within {_firstAnswers.Order().ElementAt(9 * (_firstAnswers.Count - 1) / 10):0} ms, {_firstAnswers.Count} asked; {_late} of {_acts} acts came late");
        bool isLevel = IsLevel(h => h.AliveMB) && IsLevel(h => h.WholeMB);
        Say($"{open} of {count} tabs, {minutes:0.#} minutes: alive {Of(1, h => h.AliveMB):0.0} MB, then {Of(3, h => h.AliveMB):0.0} MB; whole {Of(1, h => h.WholeMB):0} MB, then {Of(3, h => h.WholeMB):0} MB");
        Say($"verdict: memory {(isLevel ? "is level" : "GROWS")}{(open < count ? ", but not all tabs could be opened" : "")}");
        Assert.Equal(count, open);
        Assert.True(isLevel, "memory grows; the quarters are above");
    }

    private double Of(int quarter, Func<HostedPage.Holding, double> what) => Median(_samples[quarter].Select(what));

    private bool IsLevel(Func<HostedPage.Holding, double> what) => Of(3, what) <= Growth * Of(1, what) + SlackMB;

    // The recuperator's, the last of the two in the file.
    private static string Conductance(string machine) => machine.Split('\n').Last(l => l.TrimStart().StartsWith("conductance:", StringComparison.Ordinal)).Trim();

    private static void Say(FormattableString text) => TestContext.Current.TestOutputHelper!.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    private static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }
}
