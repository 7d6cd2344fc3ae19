namespace Coldwright.Machine.Files.Keys;

/// <summary>Which way gas may pass through a part.</summary>
public enum PortDirection
{
    /// <summary>In and out.</summary>
    Through,
    /// <summary>Only out: a source.</summary>
    Source,
    /// <summary>Only in: an end.</summary>
    End,
    /// <summary>No gas passes.</summary>
    None,
}

/// <summary>A kind of part: its word, keys and streams.</summary>
/// <param name="Word">The word behind <c>kind</c>.</param>
/// <param name="Section">Its keys, <c>kind</c> and <c>maximum-pressure</c> included.</param>
/// <param name="Streams">Names of its streams when it has several; empty when the port is the part's bare name.</param>
/// <param name="Direction">Which way gas may pass.</param>
public sealed record PartKind(string Word, FileSection Section, IReadOnlyList<string> Streams, PortDirection Direction)
{
    /// <summary>Stream meant by the bare name of a part with streams; null when the stream must be named.</summary>
    public string? DefaultStream { get; init; }

    /// <summary>True when the part stands in the cold box.</summary>
    public bool IsCold { get; init; }
}
