using Coldwright.Machine.Files.Editing;

namespace Coldwright.Web.Orders;

/// <summary>What an answer would write into the machine file, as single values that can be changed where they stand.</summary>
internal static class FileKeys
{
    /// <summary>Values of a part's keys; a group in braces is taken apart.</summary>
    /// <param name="part">Name of the part.</param>
    /// <param name="keys">Keys with their text as it would stand in the file.</param>
    public static IEnumerable<(string Place, string Value)> OfPart(string part, IEnumerable<(string Key, string Text)> keys)
    {
        foreach (var (key, text) in keys)
            if (text.StartsWith('{'))
                foreach (var piece in text.Trim('{', '}').Split(',', StringSplitOptions.TrimEntries))
                {
                    var colon = piece.IndexOf(':', StringComparison.Ordinal);
                    yield return ($"parts/{part}/{key}/{piece[..colon]}", piece[(colon + 1)..].Trim());
                }
            else yield return ($"parts/{part}/{key}", text);
    }

    /// <summary>Those of the values that the file does not hold already, each with what stands there now.</summary>
    /// <param name="text">Text of the machine file.</param>
    /// <param name="values">Values.</param>
    public static IReadOnlyList<(string Place, string? Was, string Value)> Unlike(string text, IEnumerable<(string Place, string Value)> values) =>
        [.. values.Select(v => (v.Place, Was: ValueEditor.Find(text, v.Place), v.Value)).Where(v => v.Was != v.Value)];
}
