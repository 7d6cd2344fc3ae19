using System.Net;
using System.Net.Http.Headers;
using System.Text;
using Coldwright.Web.Access;

namespace Coldwright.Web.Tests;

/// <summary>Who may ask for what: names, origins, the page's word, the token, paths.</summary>
public sealed class AccessTests : IAsyncDisposable
{
    private readonly CoolerCopy _cooler = new();
    private readonly HttpClient _client = new(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false });
    private PageServer? _server;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private async Task<string> Serve(string? token = null)
    {
        _server = await PageServer.Start(new PageOptions { Directory = _cooler.Path, Address = token is null ? IPAddress.Loopback : IPAddress.Any, Token = token }, Cancel);
        return $"http://127.0.0.1:{new Uri(_server.Url).Port}/";
    }

    private async Task<HttpResponseMessage> Send(HttpMethod method, string url, string? body = null, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(method, new Uri(url));
        if (body is not null) request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        foreach (var (name, value) in headers) request.Headers.TryAddWithoutValidation(name, value);
        return await _client.SendAsync(request, Cancel);
    }

    private async Task<string> PageWord(string url) => (await _client.GetStringAsync(new Uri(url), Cancel)).Split("page-word\" content=\"")[1].Split('"')[0];

    [Theory]
    [InlineData("localhost", HttpStatusCode.OK)]
    [InlineData("127.0.0.1", HttpStatusCode.OK)]
    [InlineData("evil.example", HttpStatusCode.MisdirectedRequest)]
    [InlineData("192.168.1.7", HttpStatusCode.MisdirectedRequest)]
    [InlineData("localhost.evil.example", HttpStatusCode.MisdirectedRequest)]
    public async Task OnlyItsOwnNameIsAnswered(string host, HttpStatusCode expected) =>
        Assert.Equal(expected, (await Send(HttpMethod.Get, await Serve() + "api/state", null, ("Host", host))).StatusCode);

    [Fact]
    public async Task OnlyThePageItselfMayChangeSomething()
    {
        var url = await Serve();
        var word = await PageWord(url);
        const string change = """{"changes":[{"place":"name","was":"workshop cooler","value":"mine"}]}""";
        foreach (var headers in new (string, string)[][] { [], [(Gate.Header, "guess")], [(Gate.Header, word), ("Origin", "http://evil.example")], [(Gate.Header, word), ("Sec-Fetch-Site", "cross-site")] })
            Assert.Equal(HttpStatusCode.Forbidden, (await Send(HttpMethod.Post, url + "api/edit", change, headers)).StatusCode);
        Assert.Contains("name: workshop cooler", _cooler.Machine, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await Send(HttpMethod.Post, url + "api/edit", change, (Gate.Header, word), ("Origin", url.TrimEnd('/')), ("Sec-Fetch-Site", "same-origin"))).StatusCode);
        Assert.Contains("name: mine", _cooler.Machine, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("edit")]
    [InlineData("undo")]
    [InlineData("redo")]
    [InlineData("try")]
    [InlineData("start")]
    [InlineData("cancel")]
    [InlineData("keep")]
    [InlineData("take")]
    public async Task NothingIsStartedOrChangedWithoutThePagesWord(string path)
    {
        var url = await Serve();
        var before = _cooler.Machine;
        foreach (var headers in new (string, string)[][] { [], [("Origin", "null"), (Gate.Header, await PageWord(url))], [("Sec-Fetch-Site", "same-site"), (Gate.Header, await PageWord(url))] })
            Assert.Equal(HttpStatusCode.Forbidden, (await Send(HttpMethod.Post, url + "api/" + path, """{"name":"mine","kind":"batch","id":1}""", headers)).StatusCode);
        // By another method it is no request that changes something.
        Assert.Equal(HttpStatusCode.NotFound, (await Send(HttpMethod.Get, url + "api/" + path)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await Send(HttpMethod.Put, url + "api/" + path, "{}")).StatusCode);
        Assert.Equal(before, _cooler.Machine);
        Assert.Equal(["machine.yaml", "shop.yaml"], Directory.EnumerateFileSystemEntries(_cooler.Path).Select(Path.GetFileName).Order());
    }

    [Fact]
    public async Task OnlyThisComputerReachesItUnlessAsked()
    {
        var port = new Uri(await Serve()).Port;
        Assert.Equal($"http://127.0.0.1:{port}/", _server!.Url);
        foreach (var own in await Dns.GetHostAddressesAsync(Dns.GetHostName(), Cancel))
        {
            if (IPAddress.IsLoopback(own)) continue;
            using var socket = new System.Net.Sockets.Socket(own.AddressFamily, System.Net.Sockets.SocketType.Stream, System.Net.Sockets.ProtocolType.Tcp);
            await Assert.ThrowsAsync<System.Net.Sockets.SocketException>(() => socket.ConnectAsync(own, port, Cancel).AsTask());
        }
    }

    [Fact]
    public async Task AVariantThatIsALinkIsNotRead()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "links need a privilege there");
        using var elsewhere = new CoolerCopy();
        Directory.CreateDirectory(Path.Combine(_cooler.Path, "variants"));
        Directory.CreateSymbolicLink(Path.Combine(_cooler.Path, "variants", "linked"), elsewhere.Path);
        elsewhere.Machine = elsewhere.Machine.Replace("name: workshop cooler", "name: a stranger", StringComparison.Ordinal);
        var url = await Serve();
        var answer = await Send(HttpMethod.Post, url + "api/take", """{"name":"linked"}""", (Gate.Header, await PageWord(url)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.DoesNotContain("stranger", _cooler.Machine, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Send(HttpMethod.Post, url + "api/start", """{"kind":"compare","second":"linked"}""", (Gate.Header, await PageWord(url)))).StatusCode);
    }

    [Fact]
    public async Task AnEndlessRequestIsRefused()
    {
        var url = await Serve();
        var body = $$"""{"changes":[{"place":"name","was":"workshop cooler","value":"{{new string('x', 300_000)}}"}]}""";
        Assert.Equal(HttpStatusCode.BadRequest, (await Send(HttpMethod.Post, url + "api/edit", body, (Gate.Header, await PageWord(url)))).StatusCode);
        Assert.Contains("name: workshop cooler", _cooler.Machine, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("files/../machine.yaml")]
    [InlineData("files/..%2fmachine.yaml")]
    [InlineData("files/%2e%2e/%2e%2e/etc/passwd")]
    [InlineData("machine.yaml")]
    [InlineData("files//etc/passwd")]
    [InlineData("files/index.html")]
    public async Task NothingOutsideThePagesOwnFilesIsHandedOut(string path)
    {
        var answer = await Send(HttpMethod.Get, await Serve() + path);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Theory]
    [InlineData("../outside")]
    [InlineData("a/b")]
    [InlineData("..")]
    [InlineData("")]
    [InlineData("C:evil")]
    public async Task AVariantStaysInsideTheFolder(string name)
    {
        var url = await Serve();
        var word = await PageWord(url);
        var body = $$"""{"name":"{{name}}","kind":"compare","first":"{{name}}"}""";
        Assert.Equal(HttpStatusCode.Conflict, (await Send(HttpMethod.Post, url + "api/keep", body, (Gate.Header, word))).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await Send(HttpMethod.Post, url + "api/take", body, (Gate.Header, word))).StatusCode);
        Assert.False(Directory.Exists(Path.Combine(_cooler.Path, "variants")));
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{\"changes\":7}")]
    [InlineData("{\"changes\":[{\"place\":5}]}")]
    [InlineData("{\"changes\":")]
    public async Task AStrangeRequestIsRefusedInWords(string body)
    {
        var url = await Serve();
        var answer = await Send(HttpMethod.Post, url + "api/edit", body, (Gate.Header, await PageWord(url)));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("problems", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Fact]
    public async Task AnOpenPageNeedsItsToken()
    {
        var url = await Serve("0123456789abcdef");
        Assert.Equal(HttpStatusCode.Unauthorized, (await Send(HttpMethod.Get, url)).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await Send(HttpMethod.Get, url + "api/state")).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await Send(HttpMethod.Get, url + "?token=wrong")).StatusCode);
        Assert.DoesNotContain("workshop", await (await Send(HttpMethod.Get, url)).Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        var opened = await Send(HttpMethod.Get, url + "?token=0123456789abcdef");
        Assert.Equal(HttpStatusCode.SeeOther, opened.StatusCode);
        var cookie = Assert.Single(opened.Headers.GetValues("Set-Cookie"));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(HttpStatusCode.OK, (await Send(HttpMethod.Get, url + "api/state", null, ("Cookie", cookie.Split(';')[0]))).StatusCode);
    }

    [Fact]
    public async Task AnOpenPageWithoutTokenIsNotServed() =>
        await Assert.ThrowsAsync<ArgumentException>(() => PageServer.Start(new PageOptions { Directory = _cooler.Path, Address = IPAddress.Any }, Cancel));

    [Fact]
    public async Task EveryAnswerForbidsForeignScriptsAndFrames()
    {
        var url = await Serve();
        foreach (var path in (string[])["", "api/state", "files/app.js", "nowhere"])
        {
            var policy = Assert.Single((await Send(HttpMethod.Get, url + path)).Headers.GetValues("Content-Security-Policy"));
            Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.Contains("script-src 'self'", policy, StringComparison.Ordinal);
            Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task AMachineFileThatIsALinkIsNotWritten()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "links need a privilege there");
        var elsewhere = Path.Combine(Directory.CreateTempSubdirectory("coldwright-elsewhere-").FullName, "machine.yaml");
        File.Move(_cooler.MachinePath, elsewhere);
        File.CreateSymbolicLink(_cooler.MachinePath, elsewhere);
        var before = await File.ReadAllTextAsync(elsewhere, Cancel);
        var url = await Serve();
        var answer = await Send(HttpMethod.Post, url + "api/edit", """{"changes":[{"place":"name","was":"workshop cooler","value":"mine"}]}""", (Gate.Header, await PageWord(url)));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(before, await File.ReadAllTextAsync(elsewhere, Cancel));
        Directory.Delete(Path.GetDirectoryName(elsewhere)!, recursive: true);
    }

    public async ValueTask DisposeAsync()
    {
        if (_server is not null) await _server.DisposeAsync();
        _client.Dispose();
        _cooler.Dispose();
    }
}
