using Coldwright.Machine.Description;

namespace Coldwright.Machine.Files;

/// <summary>The text of ports: <c>part</c> or <c>part.stream</c>.</summary>
public static class Ports
{
    /// <summary>The part's name in a port.</summary>
    public static string PartName(string port) => port.IndexOf('.') is >= 0 and var dot ? port[..dot] : port;

    /// <summary>The stream's name in a port; null when it names none.</summary>
    public static string? StreamName(string port) => port.IndexOf('.') is >= 0 and var dot ? port[(dot + 1)..] : null;

    /// <summary>All ports of a part.</summary>
    public static IEnumerable<string> Of(Part part)
    {
        var kind = PartWords.KindOf(part);
        return kind.Streams.Count == 0 ? [part.Name] : kind.Streams.Select(s => $"{part.Name}.{s}");
    }
}
