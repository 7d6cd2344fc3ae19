using System.Globalization;

namespace Coldwright.Machine.Files.Editing;

/// <summary>
/// Changes single values of a YAML text where they stand: comments, order, spacing and line ends stay as they were written. A place is named by
/// its keys from the root, <c>parts/recuperator/length</c>; an item of a list by its number from 0, <c>lines/3/length</c>.
/// </summary>
public static class ValueEditor
{
    /// <summary>The text of a value; null when nothing stands there or it is no single value.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="place">Keys from the root, joined by <c>/</c>.</param>
    public static string? Find(string text, string place) => Walk(PlacedTree.Read(text), place.Split('/')) is PlacedScalar { Text: var value } ? value : null;

    /// <summary>The text with one value changed, added or, with null, taken out.</summary>
    /// <param name="text">The file's text; it must be readable YAML.</param>
    /// <param name="place">Keys from the root, joined by <c>/</c>; all but the last two must exist.</param>
    /// <param name="value">The new value without quotation marks; null takes the key out.</param>
    /// <exception cref="ArgumentException">The place does not exist, or the value cannot stand there.</exception>
    public static string Set(string text, string place, string? value)
    {
        if (value is not null && value.Any(char.IsControl)) throw new ArgumentException($"{place}: a value is one line of text", nameof(value));
        value = value?.Trim();
        var root = PlacedTree.Read(text) ?? throw new ArgumentException("the file is not readable YAML, so nothing in it can be changed from here", nameof(text));
        var keys = place.Split('/');
        var found = Walk(root, keys);
        if (value is null) return found is null ? text : Without(text, root, keys, place);
        if (value.Length == 0) throw new ArgumentException($"{place}: nothing was given", nameof(value));
        if (found is not null and not PlacedScalar) throw new ArgumentException($"{place} is a group or list; one value cannot take its place", nameof(place));
        // Plain where that reads back as it was meant, else in quotation marks.
        foreach (var quoted in Spellings(value, found is PlacedScalar { Quote: var q } ? q : ' '))
        {
            var changed = found is PlacedScalar scalar ? Replaced(text, scalar, quoted) : Added(text, root, keys, quoted, place);
            if (Find(changed, place) == value && CountOf(PlacedTree.Read(changed)) == CountOf(root) + (found is null ? 1 + Missing(root, keys) : 0)) return changed;
        }
        throw new ArgumentException($"{place}: '{value}' cannot be written there", nameof(value));
    }

    private static IEnumerable<string> Spellings(string value, char quote)
    {
        if (quote == ' ') yield return value;
        if (quote == '\'' && !value.Contains('\'')) yield return $"'{value}'";
        yield return $"\"{value.Replace("\\", "\\\\").Replace("\"", "\\\"")}\"";
    }

    private static string Replaced(string text, PlacedScalar at, string spelling)
    {
        if (at.End > at.Start) return string.Concat(text.AsSpan(0, at.Start), spelling, text.AsSpan(at.End));
        // A key with nothing behind it: the empty value's place is right behind the colon.
        var colon = text.LastIndexOf(':', Math.Min(at.Start, text.Length - 1));
        return string.Concat(text.AsSpan(0, colon + 1), " ", spelling, text.AsSpan(colon + 1));
    }

    private static string Added(string text, PlacedNode root, string[] keys, string spelling, string place)
    {
        var depth = keys.Length - 1;
        while (depth > 0 && Walk(root, keys[..depth]) is null) depth--;
        if (depth < keys.Length - 2 || Walk(root, keys[..depth]) is not PlacedMap { Entries.Count: > 0 } map)
            throw new ArgumentException($"{place} does not exist in the file, and there is no group of keys to which it could be added", nameof(place));
        var rest = keys[depth..];
        if (map.IsFlow)
        {
            var last = map.Entries[^1].Value.End;
            var entry = rest.Length == 1 ? $", {rest[0]}: {spelling}" : $", {rest[0]}: {{{rest[1]}: {spelling}}}";
            return text.Insert(last, entry);
        }
        var newLine = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        var indent = new string(' ', map.Entries[0].Key.Column);
        var lines = rest.Length == 1 ? $"{indent}{rest[0]}: {spelling}" : $"{indent}{rest[0]}:{newLine}{indent}  {rest[1]}: {spelling}";
        var lineEnd = text.IndexOf('\n', Math.Min(map.Entries[^1].Value.End, text.Length));
        return lineEnd < 0 ? text + newLine + lines + newLine : text.Insert(lineEnd + 1, lines + newLine);
    }

    private static string Without(string text, PlacedNode root, string[] keys, string place)
    {
        if (Walk(root, keys[..^1]) is not PlacedMap map) throw new ArgumentException($"{place} is an item of a list and cannot be taken out from here", nameof(place));
        var index = map.Entries.ToList().FindIndex(e => e.Key.Text == keys[^1]);
        var (key, value) = map.Entries[index];
        if (map.Entries.Count == 1) throw new ArgumentException($"{place} is the only key of its group and cannot be taken out", nameof(place));
        if (map.IsFlow)
        {
            var (from, to) = index > 0 ? (map.Entries[index - 1].Value.End, value.End) : (key.Start, map.Entries[1].Key.Start);
            return text.Remove(from, to - from);
        }
        var lineStart = text.LastIndexOf('\n', Math.Max(0, key.Start - 1)) + 1;
        if (text[lineStart..key.Start].Trim().Length > 0) throw new ArgumentException($"{place} begins an item of a list and cannot be taken out from here", nameof(place));
        var lineEnd = text.IndexOf('\n', Math.Min(value.End, text.Length));
        return lineEnd < 0 ? text[..lineStart] : text.Remove(lineStart, lineEnd + 1 - lineStart);
    }

    private static PlacedNode? Walk(PlacedNode? node, ReadOnlySpan<string> keys)
    {
        foreach (var key in keys)
            node = node switch
            {
                PlacedMap map => map[key],
                PlacedList list when int.TryParse(key, NumberStyles.None, CultureInfo.InvariantCulture, out var i) && i < list.Items.Count => list.Items[i],
                _ => null,
            };
        return node;
    }

    // A new group around the new key is one value more.
    private static int Missing(PlacedNode root, string[] keys) => keys.Length > 1 && Walk(root, keys[..^1]) is null ? 1 : 0;

    // Values and groups: a spelling that swallowed a neighbour or made another is found by their number.
    private static int CountOf(PlacedNode? node) => node switch
    {
        PlacedMap map => 1 + map.Entries.Sum(e => CountOf(e.Value)),
        PlacedList list => 1 + list.Items.Sum(CountOf),
        null => 0,
        _ => 1,
    };
}
