using System.Net;
using Coldwright.Web.Http;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Coldwright.Web;

/// <summary>Serves a cooler's page until it is disposed of.</summary>
public sealed class PageServer : IAsyncDisposable
{
    private const long LargestBodyBytes = 200_000;
    private const int MostConnections = 400;

    private readonly WebApplication _server;
    private readonly PageApi _api;

    private PageServer(WebApplication server, PageApi api, string url) => (_server, _api, Url) = (server, api, url);

    /// <summary>Address of the page, without token.</summary>
    public string Url { get; }

    /// <summary>How many requests have been answered since it began.</summary>
    public long Answered => _api.Answered;

    /// <summary>Begins to serve.</summary>
    /// <param name="options">What, and to whom.</param>
    /// <param name="cancel">Stops the beginning.</param>
    /// <exception cref="ArgumentException">Other computers could reach the page and no token is asked for.</exception>
    /// <exception cref="IOException">The address or port cannot be used.</exception>
    public static async Task<PageServer> Start(PageOptions options, CancellationToken cancel = default)
    {
        if (options is { IsOpen: true, Token: null }) throw new ArgumentException($"address {options.Address}: other computers could reach the page, so a token must be asked for", nameof(options));
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder.WebHost.UseKestrelCore().ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = LargestBodyBytes;
            kestrel.Limits.MaxConcurrentConnections = MostConnections;
            kestrel.Listen(new IPEndPoint(options.Address, options.Port));
        });
        builder.Services.AddSingleton<IHostLifetime, NoSignals>();
        var server = builder.Build();
        var api = new PageApi(options);
        server.Run(api.Answer);
        await server.StartAsync(cancel).ConfigureAwait(false);
        var bound = server.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        return new PageServer(server, api, bound.TrimEnd('/') + "/");
    }

    /// <summary>Leaves the signals of the process to whoever owns the process; the host's own lifetime would take Ctrl-C and termination for itself.</summary>
    private sealed class NoSignals : IHostLifetime
    {
        public Task WaitForStartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        _api.Dispose();
        // Visitors' open requests are not waited for: whoever stops the program wants it stopped.
        using var now = new CancellationTokenSource(TimeSpan.FromMilliseconds(500));
        await _server.StopAsync(now.Token).ConfigureAwait(false);
        await _server.DisposeAsync().ConfigureAwait(false);
    }
}
