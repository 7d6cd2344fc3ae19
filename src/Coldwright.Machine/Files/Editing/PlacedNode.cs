namespace Coldwright.Machine.Files.Editing;

/// <summary>A piece of a YAML text with the characters it takes up.</summary>
/// <param name="Start">First character.</param>
/// <param name="End">One past the last character that belongs to it; comments and line ends behind it do not.</param>
/// <param name="Column">Column of its first character, from 0.</param>
internal abstract record PlacedNode(int Start, int End, int Column);

/// <summary>A single value.</summary>
/// <param name="Quote">Its quotation mark; a blank when it has none.</param>
internal sealed record PlacedScalar(int Start, int End, int Column, string Text, char Quote) : PlacedNode(Start, End, Column);

/// <summary>A list.</summary>
internal sealed record PlacedList(int Start, int End, int Column, IReadOnlyList<PlacedNode> Items) : PlacedNode(Start, End, Column);

/// <summary>Keys with values.</summary>
/// <param name="IsFlow">True when it stands in braces on one line.</param>
internal sealed record PlacedMap(int Start, int End, int Column, IReadOnlyList<(PlacedScalar Key, PlacedNode Value)> Entries, bool IsFlow) : PlacedNode(Start, End, Column)
{
    public PlacedNode? this[string key] => Entries.FirstOrDefault(e => e.Key.Text == key).Value;
}
