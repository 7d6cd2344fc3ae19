using System.Net;
using System.Net.Sockets;
using MQTTnet;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace Coldwright.Runs.Tests.Live;

/// <summary>An MQTT broker inside the test process, on a free port of this computer alone.</summary>
internal sealed class TestBroker : IAsyncDisposable
{
    private readonly SemaphoreSlim _asked = new(0), _acknowledged = new(0);
    private MqttServer _server;

    private TestBroker(int port) => (Port, _server) = (port, Make(port));

    /// <summary>Where it listens.</summary>
    public int Port { get; }
    /// <summary>User and password it wants; null to let anybody in.</summary>
    public (string User, string Password)? Wants { get; set; }
    /// <summary>A topic that it gives to nobody.</summary>
    public string Withheld { get; set; } = "";
    /// <summary>Called when a client has acknowledged a message.</summary>
    public Action OnAcknowledged { get; set; } = () => { };

    public static async Task<TestBroker> StartAsync()
    {
        int port;
        using (var free = new TcpListener(IPAddress.Loopback, 0))
        {
            free.Start();
            port = ((IPEndPoint)free.LocalEndpoint).Port;
        }
        var broker = new TestBroker(port);
        await broker._server.StartAsync();
        return broker;
    }

    /// <summary>Waits until a client has asked for a topic.</summary>
    public Task WhenAskedAsync(CancellationToken cancel) => _asked.WaitAsync(TimeSpan.FromSeconds(30), cancel);

    /// <summary>Sends to whoever asked for the topic and waits for the acknowledgement.</summary>
    public async Task SayAsync(string topic, string text, CancellationToken cancel)
    {
        await SendAsync(topic, text, false, cancel);
        await WhenAcknowledgedAsync(cancel);
    }

    /// <summary>Waits until a client has acknowledged one more message.</summary>
    public Task WhenAcknowledgedAsync(CancellationToken cancel) => _acknowledged.WaitAsync(TimeSpan.FromSeconds(30), cancel);

    /// <summary>Sends a message that the broker keeps for those who come later.</summary>
    public Task KeepAsync(string topic, string text, CancellationToken cancel) => SendAsync(topic, text, true, cancel);

    /// <summary>Goes away, as a broker whose computer is switched off.</summary>
    public async Task StopAsync()
    {
        await _server.StopAsync(new MqttServerStopOptions());
        _server.Dispose();
    }

    /// <summary>Comes back on the same port.</summary>
    public async Task StartAgainAsync()
    {
        _server = Make(Port);
        await _server.StartAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (_server.IsStarted) await StopAsync();
        _asked.Dispose();
        _acknowledged.Dispose();
    }

    private Task SendAsync(string topic, string text, bool retain, CancellationToken cancel) =>
        _server.InjectApplicationMessage(new InjectedMqttApplicationMessage(new MqttApplicationMessageBuilder().WithTopic(topic).WithPayload(text).WithRetainFlag(retain).WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build()), cancel);

    private MqttServer Make(int port)
    {
        var factory = new MqttServerFactory();
        var server = factory.CreateMqttServer(factory.CreateServerOptionsBuilder().WithDefaultEndpoint().WithDefaultEndpointPort(port).WithDefaultEndpointReuseAddress()
            .WithDefaultEndpointBoundIPAddress(IPAddress.Loopback).WithDefaultEndpointBoundIPV6Address(IPAddress.None).Build());
        server.ValidatingConnectionAsync += caller =>
        {
            if (Wants is { } who && (caller.UserName, caller.Password) != who) caller.ReasonCode = MqttConnectReasonCode.BadUserNameOrPassword;
            return Task.CompletedTask;
        };
        server.InterceptingSubscriptionAsync += asked =>
        {
            if (asked.TopicFilter.Topic == Withheld) asked.Response.ReasonCode = MqttSubscribeReasonCode.NotAuthorized;
            return Task.CompletedTask;
        };
        server.ClientSubscribedTopicAsync += _ =>
        {
            _asked.Release();
            return Task.CompletedTask;
        };
        server.ClientAcknowledgedPublishPacketAsync += _ =>
        {
            OnAcknowledged();
            _acknowledged.Release();
            return Task.CompletedTask;
        };
        return server;
    }
}
