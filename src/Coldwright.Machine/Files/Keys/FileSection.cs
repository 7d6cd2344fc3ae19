namespace Coldwright.Machine.Files.Keys;

/// <summary>A key of a file.</summary>
/// <param name="Name">The word in the file.</param>
/// <param name="Form">What may stand behind it.</param>
/// <param name="IsRequired">True when it must be there.</param>
/// <param name="Meaning">One sentence for the person who fills it in.</param>
public sealed record FileKey(string Name, ValueForm Form, bool IsRequired, string Meaning);

/// <summary>
/// A group of keys. These tables drive the reader, the "nearest key" of its messages and the JSON schema,
/// so that the three cannot differ.
/// </summary>
/// <param name="Title">What the group describes.</param>
/// <param name="Keys">Its keys.</param>
public sealed record FileSection(string Title, IReadOnlyList<FileKey> Keys)
{
    /// <summary>Descriptions that may be given in several ways, one of which must be there.</summary>
    public IReadOnlyList<KeyNeed> Needs { get; init; } = [];

    /// <summary>The key of that name; throws when the table has none, which is a mistake in the program.</summary>
    public FileKey this[string name] => Keys.FirstOrDefault(k => k.Name == name)
        ?? throw new InvalidOperationException($"the key table '{Title}' has no key '{name}'");
}

/// <summary>One thing that may be described in several ways.</summary>
/// <param name="Ways">Each way: the keys that are needed for it, all of them.</param>
public sealed record KeyNeed(params IReadOnlyList<IReadOnlyList<string>> Ways)
{
    /// <summary>In words: <c>displacement and speed, or nameplate</c>.</summary>
    public string Text => string.Join(", or ", Ways.Select(w => w.Count < 3 ? string.Join(" and ", w) : $"{string.Join(", ", w.SkipLast(1))} and {w[^1]}"));
}
