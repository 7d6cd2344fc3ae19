using System.Globalization;

namespace Coldwright.Runs.Live;

/// <summary>Where an MQTT broker listens. Ports without a word are those of the IANA register of service names: 1883, and 8883 with encryption.</summary>
/// <param name="Host">Name or number of the computer.</param>
/// <param name="Port">Port, 1 to 65535.</param>
/// <param name="IsEncrypted">True to speak TLS and to check the broker's certificate.</param>
public sealed record BrokerAddress(string Host, int Port, bool IsEncrypted)
{
    private const int PlainPort = 1883, EncryptedPort = 8883;

    /// <summary>Reads <c>HOST</c>, <c>HOST:PORT</c>, <c>[IPv6]:PORT</c>, each with <c>mqtt://</c> or <c>mqtts://</c> before it or without.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="address">The address; null when the text is none.</param>
    /// <param name="complaint">What is wrong; empty when nothing is.</param>
    public static bool TryParse(string text, out BrokerAddress? address, out string complaint)
    {
        (address, complaint) = (null, "");
        var isEncrypted = text.StartsWith("mqtts://", StringComparison.OrdinalIgnoreCase);
        var rest = text.Trim();
        if (rest.IndexOf("://", StringComparison.Ordinal) is var at and >= 0)
        {
            if (!isEncrypted && !rest.StartsWith("mqtt://", StringComparison.OrdinalIgnoreCase)) complaint = $"'{rest[..at]}' is no way to reach a broker; write mqtt:// or, encrypted, mqtts://";
            rest = rest[(at + 3)..];
        }
        rest = rest.TrimEnd('/');
        // what stands before an @ may be a password: it is not shown
        if (rest.Contains('@')) complaint = "user and password do not belong on a command line, where others see them; leave out what stands before the @";
        if (complaint.Length > 0) return false;
        var (host, port) = Split(rest);
        var number = isEncrypted ? EncryptedPort : PlainPort;
        if (host.Length == 0 || host.AsSpan().ContainsAny(" /\\?#\t")) complaint = $"'{rest}' is no address; write HOST or HOST:PORT";
        else if (port is not null && (!int.TryParse(port, NumberStyles.None, CultureInfo.InvariantCulture, out number) || number is < 1 or > 65535)) complaint = $"port '{port}' is no number from 1 to 65535";
        if (complaint.Length > 0) return false;
        address = new(host, number, isEncrypted);
        return true;
    }

    // a bare IPv6 number has several colons and no port
    private static (string Host, string? Port) Split(string text)
    {
        if (text.StartsWith('[') && text.IndexOf(']') is var close and > 0) return (text[1..close], text[(close + 1)..] is [':', .. var after] ? after : null);
        var colon = text.LastIndexOf(':');
        return colon < 0 || text.IndexOf(':') != colon ? (text, null) : (text[..colon], text[(colon + 1)..]);
    }

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{(Host.Contains(':') ? $"[{Host}]" : Host)}:{Port}");
}
