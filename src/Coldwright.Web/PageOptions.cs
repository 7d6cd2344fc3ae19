using System.Net;

namespace Coldwright.Web;

/// <summary>How a cooler's page is served.</summary>
public sealed record PageOptions
{
    /// <summary>The cooler's folder.</summary>
    public required string Directory { get; init; }
    /// <summary>Address to listen on; this computer alone when left out.</summary>
    public IPAddress Address { get; init; } = IPAddress.Loopback;
    /// <summary>Port; 0: any that is free.</summary>
    public int Port { get; init; }
    /// <summary>What a visitor must show; null when none is asked for. Needed as soon as other computers can reach the page.</summary>
    public string? Token { get; init; }

    /// <summary>True when other computers can reach the page.</summary>
    public bool IsOpen => !IPAddress.IsLoopback(Address);
}
