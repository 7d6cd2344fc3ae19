namespace Coldwright.Runs.Live;

/// <summary>
/// The column of a log that a topic fills. It is called like the topic; a value inside a message in JSON is called like the topic with the value's pointer behind a <c>#</c>
/// (RFC 6901, section 6), as in <c>cooler/coil#/inlet/T</c>. No topic holds a <c>#</c>, so the two cannot be confused.
/// </summary>
public static class TopicColumn
{
    private const int Longest = 200;

    /// <summary>The topic that fills a column.</summary>
    public static string Topic(string column) => column.IndexOf('#') is var at and >= 0 ? column[..at] : column;

    /// <summary>What is wrong with a column's name as that of a topic; empty when nothing is.</summary>
    public static string Complaint(string column)
    {
        var topic = Topic(column);
        if (!CanBeHeading(column)) return $"it is empty, longer than {Longest} characters, or holds a quote, a semicolon or a character that cannot be seen";
        if (topic.Length == 0 || topic.Contains('+')) return "it is no topic; a channel has one topic, without + or #";
        return column.Length > topic.Length && (column.Length < topic.Length + 2 || column[topic.Length + 1] != '/') ? "behind the # stands the way to a value in the message, as in cooler/coil#/inlet/T" : "";
    }

    /// <summary>True when the name can stand in the log's heading.</summary>
    public static bool CanBeHeading(string column) => column.Length is > 0 and <= Longest && !column.Any(c => c is '"' or ';' || char.IsControl(c)) && column == column.Trim();

    /// <summary>The name of a value one level down.</summary>
    /// <param name="pointer">Pointer so far; empty at the top.</param>
    /// <param name="key">Key or number of the value.</param>
    public static string Below(string pointer, string key) => $"{pointer}/{key.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}";
}
