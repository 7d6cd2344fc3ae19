namespace Coldwright.Machine.Files.Tree;

/// <summary>A piece of a YAML file with its place.</summary>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column, from 1.</param>
public abstract record FileNode(int Line, int Column)
{
    /// <summary>What it is, for messages: <c>a text</c>, <c>a list</c>, <c>a group of keys</c>, <c>nothing</c>.</summary>
    public abstract string What { get; }
}

/// <summary>A single value, as text.</summary>
public sealed record ScalarNode(int Line, int Column, string Text) : FileNode(Line, Column)
{
    /// <inheritdoc/>
    public override string What => Text.Length == 0 ? "nothing" : "a text";
}

/// <summary>A list.</summary>
public sealed record ListNode(int Line, int Column, IReadOnlyList<FileNode> Items) : FileNode(Line, Column)
{
    /// <inheritdoc/>
    public override string What => "a list";
}

/// <summary>Keys with values, in file order, no key twice.</summary>
public sealed record MapNode(int Line, int Column, IReadOnlyList<(ScalarNode Key, FileNode Value)> Entries) : FileNode(Line, Column)
{
    /// <inheritdoc/>
    public override string What => "a group of keys";
}
