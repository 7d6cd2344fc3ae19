using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Coldwright.Machine.Files.Editing;

/// <summary>Builds the tree of a YAML text with the place of every value, for changing single values where they stand.</summary>
internal sealed class PlacedTree
{
    private const int DeepestNesting = 12;

    private readonly Parser _parser;

    private PlacedTree(string text) => _parser = new Parser(new StringReader(text));

    /// <summary>The first document's root; null when the text cannot be read.</summary>
    public static PlacedNode? Read(string text)
    {
        try
        {
            var tree = new PlacedTree(text);
            while (tree._parser.Current is null or StreamStart or DocumentStart)
                if (!tree._parser.MoveNext()) return null;
            return tree._parser.Current is StreamEnd or DocumentEnd ? null : tree.Node(1);
        }
        catch (Exception e) when (e is YamlException or InvalidOperationException or ArgumentException or FormatException or OverflowException or IndexOutOfRangeException)
        {
            // The parser fails on broken texts in more ways than its own exception (see FileTree).
            return null;
        }
    }

    private PlacedNode Node(int depth)
    {
        var at = _parser.Current!;
        var (start, column) = ((int)at.Start.Index, (int)at.Start.Column - 1);
        if (depth > DeepestNesting) throw new YamlException(at.Start, at.End, $"nested deeper than {DeepestNesting}");
        switch (at)
        {
            case Scalar scalar:
                Next();
                return new PlacedScalar(start, (int)scalar.End.Index, column, scalar.Value, scalar.Style switch { ScalarStyle.DoubleQuoted => '"', ScalarStyle.SingleQuoted => '\'', _ => ' ' });
            case SequenceStart list:
                return List(list, start, column, depth);
            case MappingStart map:
                return Map(map, start, column, depth);
            default:
                throw new YamlException(at.Start, at.End, "a value was expected");
        }
    }

    private PlacedList List(SequenceStart list, int start, int column, int depth)
    {
        var items = new List<PlacedNode>();
        Next();
        while (_parser.Current is not SequenceEnd) items.Add(Node(depth + 1));
        var end = list.Style == SequenceStyle.Flow || items.Count == 0 ? (int)_parser.Current.End.Index : items[^1].End;
        Next();
        return new PlacedList(start, end, column, items);
    }

    private PlacedMap Map(MappingStart map, int start, int column, int depth)
    {
        var entries = new List<(PlacedScalar, PlacedNode)>();
        Next();
        while (_parser.Current is not MappingEnd)
        {
            if (Node(depth + 1) is not PlacedScalar key) throw new YamlException("a key must be a text");
            entries.Add((key, Node(depth + 1)));
        }
        var isFlow = map.Style == MappingStyle.Flow;
        // The parser ends a block only where the next one begins, behind comments and blank lines that belong there.
        var end = isFlow || entries.Count == 0 ? (int)_parser.Current.End.Index : entries[^1].Item2.End;
        Next();
        return new PlacedMap(start, end, column, entries, isFlow);
    }

    private void Next()
    {
        if (!_parser.MoveNext()) throw new YamlException("the text ends in the middle of a value");
    }
}
