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
    /// <summary>The key of that name; throws when the table has none, which is a mistake in the program.</summary>
    public FileKey this[string name] => Keys.FirstOrDefault(k => k.Name == name)
        ?? throw new InvalidOperationException($"the key table '{Title}' has no key '{name}'");
}
