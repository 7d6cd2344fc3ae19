using System.Net;
using Microsoft.AspNetCore.Http;

namespace Coldwright.Web.Access;

/// <summary>What the gate says to a request.</summary>
internal enum Verdict
{
    /// <summary>It may pass.</summary>
    Pass,
    /// <summary>It names another host: a foreign page that had a name point here.</summary>
    WrongHost,
    /// <summary>It must show the token first.</summary>
    NeedsToken,
    /// <summary>It would change something and does not come from the page itself.</summary>
    Foreign,
}

/// <summary>
/// Who may ask for what. A page of another site in the same browser can send requests here too, so every request must name this host, and one that
/// changes something must come from the page itself: by its origin and by a word that only the page was given. With a token, nothing is answered without it.
/// </summary>
internal sealed class Gate(PageOptions options)
{
    /// <summary>Name of the cookie that holds the token.</summary>
    public const string Cookie = "coldwright-token";
    /// <summary>Header with the word that only the page was given.</summary>
    public const string Header = "X-Coldwright";

    private static readonly string[] _ownNames = ["localhost", Environment.MachineName, Environment.MachineName + ".local"];

    /// <summary>The word that only the page was given, new for every run of the program.</summary>
    public string PageWord { get; } = Secrets.New();

    public Verdict Judge(HttpRequest request)
    {
        if (!IsOwnHost(request.Host)) return Verdict.WrongHost;
        if (options.Token is { } token && !Secrets.Same(request.Cookies[Cookie], token)) return Verdict.NeedsToken;
        return HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) || IsFromThePage(request) ? Verdict.Pass : Verdict.Foreign;
    }

    /// <summary>True when a token that was typed or came in the address is right.</summary>
    public bool Opens(string? token) => options.Token is { } expected && Secrets.Same(token, expected);

    // A numbered address cannot be made to point elsewhere by whoever owns a name.
    private bool IsOwnHost(HostString host)
    {
        if (string.IsNullOrEmpty(host.Host)) return false;
        var isNumber = IPAddress.TryParse(host.Host.Trim('[', ']'), out var address);
        if (!options.IsOpen) return isNumber ? IPAddress.IsLoopback(address!) : host.Host.Equals("localhost", StringComparison.OrdinalIgnoreCase);
        return isNumber || _ownNames.Contains(host.Host, StringComparer.OrdinalIgnoreCase);
    }

    private bool IsFromThePage(HttpRequest request)
    {
        var origin = request.Headers.Origin.ToString();
        if (origin.Length > 0 && origin != $"{request.Scheme}://{request.Host}") return false;
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        return (site is "" or "same-origin") && Secrets.Same(request.Headers[Header], PageWord);
    }
}
