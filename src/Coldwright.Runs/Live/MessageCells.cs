using System.Globalization;
using System.Text;
using System.Text.Json;
using Coldwright.Runs.Logs;

namespace Coldwright.Runs.Live;

/// <summary>What a message says, as cells of a log: its text, or the values of an object in JSON.</summary>
internal static class MessageCells
{
    private const int LongestBytes = 65536, LongestCell = 60, LongestUnit = 4;

    /// <summary>The cells; none when the message holds nothing that belongs into the log.</summary>
    /// <param name="topic">Its topic.</param>
    /// <param name="payload">Its bytes.</param>
    /// <param name="isColumn">Tells of a name whether it is a column already; such a cell is kept whatever it says.</param>
    /// <param name="takesNew">True when a number whose column is not there yet makes one.</param>
    public static IReadOnlyList<(string Column, string Text)> Of(string topic, ReadOnlySpan<byte> payload, Func<string, bool> isColumn, bool takesNew)
    {
        if (payload.Length > LongestBytes) return [];
        var text = Encoding.UTF8.GetString(payload).Trim();
        if (isColumn(topic)) return [(topic, Clean(text))];
        var cells = new List<(string, string)>();
        if (text is ['{' or '[', ..]) Values(topic, text, cells, isColumn, takesNew);
        else if (takesNew && IsNumber(text)) cells.Add((topic, Clean(text)));
        return cells;
    }

    private static void Values(string topic, string text, List<(string, string)> cells, Func<string, bool> isColumn, bool takesNew)
    {
        try
        {
            using var document = JsonDocument.Parse(text);
            Below(document.RootElement, "");
        }
        catch (JsonException)
        {
            // cut off or no JSON at all: it holds no cell, and is counted by the caller
            cells.Clear();
        }

        void Below(JsonElement value, string pointer)
        {
            switch (value.ValueKind)
            {
                case JsonValueKind.Object:
                    foreach (var member in value.EnumerateObject()) Below(member.Value, TopicColumn.Below(pointer, member.Name));
                    break;
                case JsonValueKind.Array:
                    var i = 0;
                    foreach (var item in value.EnumerateArray()) Below(item, TopicColumn.Below(pointer, (i++).ToString(CultureInfo.InvariantCulture)));
                    break;
                default:
                    var column = $"{topic}#{pointer}";
                    var said = value.ValueKind == JsonValueKind.String ? value.GetString()! : value.ValueKind == JsonValueKind.Null ? "" : value.GetRawText();
                    if (isColumn(column) || takesNew && IsNumber(said)) cells.Add((column, Clean(said)));
                    break;
            }
        }
    }

    // a number, with a unit behind it or without; a date is none
    private static bool IsNumber(string text) => NumberCell.Read(Encoding.UTF8.GetBytes(text), decimalComma: false, out _, out _, out var rest) == CellContent.Number && rest.Length <= LongestUnit;

    private static string Clean(string text)
    {
        var kept = new StringBuilder();
        foreach (var c in text.AsSpan(0, Math.Min(text.Length, LongestCell))) kept.Append(c is ';' or '"' || char.IsControl(c) ? ' ' : c);
        return kept.ToString().Trim();
    }
}
