using Coldwright.Runs.Live;

namespace Coldwright.Runs.Tests.Live;

/// <summary>Against a broker that is not ours: MQTTnet.Server, an implementation of MQTT 3.1.1.</summary>
public sealed class TopicListenerTests : IDisposable
{
    private static readonly TimeSpan _pause = TimeSpan.FromMilliseconds(50);
    private readonly string _folder = Directory.CreateTempSubdirectory("coldwright-listener-").FullName;
    private readonly CancellationToken _cancel = TestContext.Current.CancellationToken;

    private string Path => System.IO.Path.Combine(_folder, "log.csv");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static TopicListener Listener(TestBroker broker, TopicLog log, string filter = "cooler/#", BrokerLogin? login = null, int qualityOfService = 1, bool isEncrypted = false) =>
        new(new BrokerAddress("127.0.0.1", broker.Port, isEncrypted), login, [filter], qualityOfService, log, () => DateTime.Now);

    private TopicLog Log() => new(Path, [], ["cooler/#"], () => DateTime.Now);

    private string Written()
    {
        using var reader = new StreamReader(new FileStream(Path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite));
        return reader.ReadToEnd();
    }

    /// <summary>The broker gets its acknowledgement only when the message is in the file.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public async Task EveryMessageIsWrittenBeforeItIsAcknowledged(int qualityOfService)
    {
        await using var broker = await TestBroker.StartAsync();
        using var log = Log();
        using var listener = Listener(broker, log, qualityOfService: qualityOfService);
        using var end = CancellationTokenSource.CreateLinkedTokenSource(_cancel);
        await listener.ConnectAsync(_cancel);
        var listening = listener.ListenAsync(_ => { }, _pause, end.Token);
        var (said, seen) = ("", new List<bool>());
        broker.OnAcknowledged = () => seen.Add(Written().Contains($";{said}", StringComparison.Ordinal));
        for (var i = 0; i < 20; i++) await broker.SayAsync("cooler/vessel", said = FormattableString.Invariant($"{-100.125 - i}"), _cancel);
        await end.CancelAsync();
        await listening;
        Assert.Equal((20, 20), (log.Written, log.Rows));
        Assert.True(seen.Count >= 20 && seen.All(s => s));
        Assert.Empty(listener.Gaps);
    }

    [Fact]
    public async Task ALostConnectionIsMadeAgainAndTheGapIsTold()
    {
        await using var broker = await TestBroker.StartAsync();
        await broker.KeepAsync("cooler/vessel", "-1", _cancel);
        using var log = Log();
        using var listener = Listener(broker, log);
        using var end = CancellationTokenSource.CreateLinkedTokenSource(_cancel);
        await listener.ConnectAsync(_cancel);
        await broker.WhenAcknowledgedAsync(_cancel);
        var told = new List<ListeningGap>();
        var again = new TaskCompletionSource();
        var lost = new TaskCompletionSource();
        var listening = listener.ListenAsync(gap =>
        {
            told.Add(gap);
            (gap.To is null ? lost : again).TrySetResult();
        }, _pause, end.Token);
        await broker.SayAsync("cooler/vessel", "-2", _cancel);
        await broker.StopAsync();
        await lost.Task.WaitAsync(TimeSpan.FromSeconds(30), _cancel);
        await broker.StartAgainAsync();
        await again.Task.WaitAsync(TimeSpan.FromSeconds(30), _cancel);
        await broker.SayAsync("cooler/vessel", "-3", _cancel);
        await end.CancelAsync();
        await listening;
        Assert.Equal((2, 1), (log.Written, log.Kept));
        Assert.Equal(2, told.Count);
        var gap = Assert.Single(listener.Gaps);
        Assert.True(gap.To > gap.From);
        Assert.NotEqual("", gap.Reason);
    }

    [Fact]
    public async Task WhoIsNotLetInIsToldWhy()
    {
        await using var broker = await TestBroker.StartAsync();
        broker.Wants = ("me", "opensesame");
        broker.Withheld = "secret/#";
        using var log = Log();
        async Task<string> Refusal(string filter, BrokerLogin? login, bool isEncrypted = false)
        {
            using var listener = Listener(broker, log, filter, login, isEncrypted: isEncrypted);
            return (await Assert.ThrowsAsync<BrokerRefusal>(() => listener.ConnectAsync(_cancel))).Message;
        }

        var wrong = await Refusal("cooler/#", new("me", "opensesam"));
        Assert.Contains("user or password is wrong", wrong, StringComparison.Ordinal);
        Assert.DoesNotContain("opensesam", wrong, StringComparison.Ordinal);
        Assert.Contains("'secret/#'", await Refusal("secret/#", new("me", "opensesame")), StringComparison.Ordinal);
        Assert.Contains("no connection", await Refusal("cooler/#", new("me", "opensesame"), isEncrypted: true), StringComparison.Ordinal);
        using (var good = Listener(broker, log, login: new("me", "opensesame"))) await good.ConnectAsync(_cancel);
        await broker.StopAsync();
        Assert.Contains("nothing listens there", await Refusal("cooler/#", null), StringComparison.Ordinal);
        await broker.StartAgainAsync();
    }
}
