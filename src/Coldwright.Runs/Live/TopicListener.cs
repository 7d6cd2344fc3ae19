using System.Buffers;
using System.Net.Sockets;
using System.Security.Authentication;
using MQTTnet;
using MQTTnet.Exceptions;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace Coldwright.Runs.Live;

/// <summary>
/// Listens to a broker (MQTT 3.1.1) and gives every message to a log before the next is taken and before it is acknowledged. A lost connection is made again, with growing pauses.
/// Sessions are not kept: what a broker would send later came at a time that nobody knows.
/// </summary>
public sealed class TopicListener : IDisposable
{
    private static readonly TimeSpan _patience = TimeSpan.FromSeconds(10), _longestPause = TimeSpan.FromSeconds(30);

    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();
    private readonly MqttClientOptions _options;
    private readonly MqttClientSubscribeOptions _topics;
    private readonly BrokerAddress _broker;
    private readonly TopicLog _log;
    private readonly Func<DateTime> _now;
    private readonly List<ListeningGap> _gaps = [];
    private readonly TaskCompletionSource _unwritable = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private DateTime _since;
    private string _reason = "";

    /// <param name="broker">Where it is.</param>
    /// <param name="login">Who asks; null for nobody.</param>
    /// <param name="filters">Topics to ask for.</param>
    /// <param name="qualityOfService">0, 1 or 2: at most once, at least once, once.</param>
    /// <param name="log">Gets the messages.</param>
    /// <param name="now">Clock of the gaps.</param>
    public TopicListener(BrokerAddress broker, BrokerLogin? login, IReadOnlyList<string> filters, int qualityOfService, TopicLog log, Func<DateTime> now)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(qualityOfService);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(qualityOfService, 2);
        (_broker, _log, _now) = (broker, log, now);
        var options = new MqttClientOptionsBuilder().WithTcpServer(broker.Host, broker.Port).WithProtocolVersion(MqttProtocolVersion.V311).WithCleanSession()
            .WithClientId($"coldwright-{Guid.NewGuid():N}"[..23]).WithKeepAlivePeriod(_patience).WithTimeout(_patience);
        if (broker.IsEncrypted) options.WithTlsOptions(tls => tls.UseTls().WithTargetHost(broker.Host));
        if (login is not null) options.WithCredentials(login.User, login.Password);
        _options = options.Build();
        var topics = new MqttClientSubscribeOptionsBuilder();
        foreach (var filter in TopicFilter.Least(filters)) topics.WithTopicFilter(filter, (MqttQualityOfServiceLevel)qualityOfService);
        _topics = topics.Build();
        _client.ApplicationMessageReceivedAsync += Take;
        _client.DisconnectedAsync += lost =>
        {
            _reason = lost.Exception is { } e ? Words(e) : "the broker ended the connection";
            return Task.CompletedTask;
        };
    }

    /// <summary>Times without a connection so far; the last may be open.</summary>
    public IReadOnlyList<ListeningGap> Gaps => _gaps;

    /// <summary>Connects and asks for the topics.</summary>
    /// <exception cref="BrokerRefusal">The broker cannot be reached, or refuses.</exception>
    public async Task ConnectAsync(CancellationToken cancel)
    {
        try
        {
            var answer = await _client.ConnectAsync(_options, cancel).ConfigureAwait(false);
            if (answer.ResultCode != MqttClientConnectResultCode.Success) throw new BrokerRefusal($"the broker at {_broker} refuses: {Words(answer.ResultCode)}");
            var granted = await _client.SubscribeAsync(_topics, cancel).ConfigureAwait(false);
            if (granted.Items.FirstOrDefault(i => i.ResultCode > MqttClientSubscribeResultCode.GrantedQoS2) is { } refused) throw new BrokerRefusal($"the broker at {_broker} does not give the topic '{refused.TopicFilter.Topic}'");
            _since = _now();
        }
        catch (Exception e) when (!cancel.IsCancellationRequested && e is MqttCommunicationException or MqttProtocolViolationException or SocketException or OperationCanceledException or IOException or AuthenticationException)
        {
            throw new BrokerRefusal($"no connection to {_broker}: {Words(e)}");
        }
    }

    /// <summary>Listens until it is cancelled, connecting again whenever the connection is lost.</summary>
    /// <param name="told">Told of every gap when it begins and when it ends.</param>
    /// <param name="firstPause">Before the first attempt to connect again; doubled up to half a minute.</param>
    /// <param name="cancel">Ends it; what was written stays.</param>
    /// <exception cref="IOException">The log cannot be written any more.</exception>
    public async Task ListenAsync(Action<ListeningGap> told, TimeSpan firstPause, CancellationToken cancel)
    {
        try
        {
            while (true)
            {
                // looked at twice a second: an event could be missed between connecting and asking
                while (_client.IsConnected && !_unwritable.Task.IsCompleted)
                {
                    await Task.WhenAny(_unwritable.Task, Task.Delay(500, cancel)).ConfigureAwait(false);
                    cancel.ThrowIfCancellationRequested();
                }
                if (_unwritable.Task.IsCompleted) await _unwritable.Task.ConfigureAwait(false);
                await ReturnAsync(told, firstPause, cancel).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            // ended by hand: the usual end of a run
            await _client.TryDisconnectAsync().ConfigureAwait(false);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _client.Dispose();

    private async Task ReturnAsync(Action<ListeningGap> told, TimeSpan pause, CancellationToken cancel)
    {
        var gap = new ListeningGap(_log.LastHeard > _since ? _log.LastHeard : _since, null, _reason);
        _gaps.Add(gap);
        told(gap);
        while (true)
        {
            await Task.Delay(pause, cancel).ConfigureAwait(false);
            pause = pause * 2 < _longestPause ? pause * 2 : _longestPause;
            try
            {
                await ConnectAsync(cancel).ConfigureAwait(false);
                break;
            }
            catch (BrokerRefusal refusal)
            {
                // it may come back; the gap stays open and says why
                _gaps[^1] = gap = gap with { Reason = refusal.Message };
                if (_client.IsConnected) await _client.TryDisconnectAsync().ConfigureAwait(false);
            }
        }
        _gaps[^1] = gap = gap with { To = _now() };
        told(gap);
    }

    private Task Take(MqttApplicationMessageReceivedEventArgs message)
    {
        try
        {
            _log.Take(message.ApplicationMessage.Topic, message.ApplicationMessage.Payload.ToArray(), message.ApplicationMessage.Retain);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            message.ProcessingFailed = true;
            _unwritable.TrySetException(e);
        }
        return Task.CompletedTask;
    }

    private static string Words(MqttClientConnectResultCode code) => code switch
    {
        MqttClientConnectResultCode.BadUserNameOrPassword => "user or password is wrong",
        MqttClientConnectResultCode.NotAuthorized => "it wants a user and a password, or does not let this one in",
        MqttClientConnectResultCode.UnsupportedProtocolVersion => "it does not speak MQTT 3.1.1",
        MqttClientConnectResultCode.ServerUnavailable or MqttClientConnectResultCode.ServerBusy => "it is busy",
        _ => $"it answers '{code}'",
    };

    private static string Words(Exception e)
    {
        for (var inner = e; inner is not null; inner = inner.InnerException)
        {
            if (inner is AuthenticationException) return "its certificate is not trusted by this computer, or it speaks no TLS";
            if (inner is SocketException socket)
                return socket.SocketErrorCode switch
                {
                    SocketError.ConnectionRefused => "nothing listens there",
                    SocketError.HostNotFound or SocketError.NoData or SocketError.TryAgain => "there is no computer of that name",
                    SocketError.ConnectionReset => "the broker ended the connection",
                    SocketError.HostUnreachable or SocketError.NetworkUnreachable => "the network has no way there",
                    _ => socket.Message,
                };
        }
        return e is MqttCommunicationTimedOutException or OperationCanceledException ? $"no answer within {_patience.TotalSeconds:0} s" : e.Message;
    }
}
