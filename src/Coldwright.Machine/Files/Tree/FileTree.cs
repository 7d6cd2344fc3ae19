using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Coldwright.Machine.Files.Tree;

/// <summary>
/// Builds the tree of a YAML text from the parser's events. Doubled keys, aliases and more than one document are
/// reported with their place and the rest of the file is still read; nesting is limited, so no file can exhaust the stack.
/// </summary>
public sealed class FileTree
{
    private const int DeepestNesting = 12;

    private readonly Parser _parser;
    private readonly ProblemList _problems;

    private FileTree(string text, ProblemList problems)
    {
        _parser = new Parser(new StringReader(text));
        _problems = problems;
    }

    /// <summary>The root of the first document; null when the text holds none or cannot be read, which is then in <paramref name="problems"/>.</summary>
    public static FileNode? Read(string text, ProblemList problems)
    {
        var tree = new FileTree(text, problems);
        try
        {
            return tree.ReadDocument();
        }
        catch (YamlException e)
        {
            problems.Add((int)e.Start.Line, (int)e.Start.Column, "this is not readable YAML: " + Plain(e.Message));
            return null;
        }
    }

    private FileNode? ReadDocument()
    {
        Next();
        while (_parser.Current is StreamStart or DocumentStart or Comment) Next();
        if (_parser.Current is StreamEnd or DocumentEnd) return null;
        var root = ReadNode(1);
        while (TryMove())
        {
            if (_parser.Current is not DocumentStart second) continue;
            _problems.Add((int)second.Start.Line, (int)second.Start.Column, "a second document starts here ('---'); the file holds one");
            break;
        }
        return root;
    }

    private FileNode ReadNode(int depth)
    {
        var at = _parser.Current!;
        var (line, column) = ((int)at.Start.Line, (int)at.Start.Column);
        switch (at)
        {
            case Scalar scalar:
                Next();
                return new ScalarNode(line, column, scalar.IsPlainImplicit && scalar.Value is "null" or "~" ? "" : scalar.Value);
            case AnchorAlias alias:
                Next();
                _problems.Add(line, column, $"'*{alias.Value}' refers to another place in the file; write the value out here");
                return new ScalarNode(line, column, "");
            case SequenceStart or MappingStart when depth > DeepestNesting:
                throw new YamlException(at.Start, at.End, $"nested {depth} deep; the limit is {DeepestNesting}");
            case SequenceStart:
                return ReadList(line, column, depth);
            case MappingStart:
                return ReadMap(line, column, depth);
            default:
                throw new YamlException(at.Start, at.End, "a value was expected");
        }
    }

    private ListNode ReadList(int line, int column, int depth)
    {
        var items = new List<FileNode>();
        Next();
        while (_parser.Current is not SequenceEnd) items.Add(ReadNode(depth + 1));
        Next();
        return new ListNode(line, column, items);
    }

    private MapNode ReadMap(int line, int column, int depth)
    {
        var entries = new List<(ScalarNode Key, FileNode Value)>();
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        Next();
        while (_parser.Current is not MappingEnd)
        {
            var key = ReadNode(depth + 1);
            var value = ReadNode(depth + 1);
            if (key is not ScalarNode { Text.Length: > 0 } name)
                _problems.Add(key, $"{key.What} stands where a key is expected");
            else if (seen.TryGetValue(name.Text, out var first))
                _problems.Add(name, $"the key '{Shorten(name.Text)}' is here twice; the first is in line {first}");
            else
            {
                seen.Add(name.Text, name.Line);
                entries.Add((name, value));
            }
        }
        Next();
        return new MapNode(line, column, entries);
    }

    // Comments are not nodes; they may stand between any two events.
    private void Next()
    {
        do
        {
            if (!TryMove()) throw new YamlException("the file ends in the middle of a value");
        }
        while (_parser.Current is Comment);
    }

    // On some broken texts the scanner of YamlDotNet 18.1 fails with an exception of its own workings instead of a
    // YamlException (found by the mutation test: a document mark inside a value). It becomes a problem near the last good place.
    private bool TryMove()
    {
        var last = _parser.Current?.End ?? Mark.Empty;
        try
        {
            return _parser.MoveNext();
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or FormatException or OverflowException or IndexOutOfRangeException)
        {
            throw new YamlException(last, last, "the text after this place follows no rule", e);
        }
    }

    /// <summary>A text short enough for a message.</summary>
    public static string Shorten(string text) => text.Length > 40 ? text[..40] + "…" : text;

    private static string Plain(string message) =>
        message.Contains("tab", StringComparison.OrdinalIgnoreCase) ? message + " (indent with spaces)" : message;
}
