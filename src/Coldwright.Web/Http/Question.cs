using System.Text.Json;
using Coldwright.Report;
using Coldwright.Web.Cooler;
using Coldwright.Web.Orders;
using Microsoft.AspNetCore.Http;

namespace Coldwright.Web.Http;

/// <summary>The body of a request: one JSON object.</summary>
internal sealed class Question : IDisposable
{
    private const int MostChanges = 50;
    private const string OrderKey = "order";

    private readonly JsonDocument _document;

    private Question(JsonDocument document) => _document = document;

    /// <summary>The object in the body; null when there is none.</summary>
    public static async Task<Question?> Read(HttpContext context)
    {
        try
        {
            var document = await JsonDocument.ParseAsync(context.Request.Body, new JsonDocumentOptions { MaxDepth = 8 }, context.RequestAborted).ConfigureAwait(false);
            if (document.RootElement.ValueKind == JsonValueKind.Object) return new Question(document);
            document.Dispose();
            return null;
        }
        catch (Exception e) when (e is JsonException or BadHttpRequestException)
        {
            return null;
        }
    }

    /// <summary>Units asked for by the address.</summary>
    public static UnitSystem Units(HttpContext context) => context.Request.Query["units"] == "us" ? UnitSystem.Us : UnitSystem.Si;

    public string? Text(string name) => Text(_document.RootElement, name);

    /// <summary>What was filled in beside the button, as one text: the same fields give the same text.</summary>
    public string Details => _document.RootElement.TryGetProperty(OrderKey, out var order) ? order.GetRawText() : "";

    /// <summary>Reads what was filled in beside the button.</summary>
    /// <param name="roomPressurePa">Barometric pressure, Pa absolute.</param>
    public OrderReader Order(double roomPressurePa) => new(_document.RootElement.TryGetProperty(OrderKey, out var order) ? order : default, roomPressurePa);

    public bool Flag(string name) => _document.RootElement.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.True;

    public int? Number(string name) => _document.RootElement.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out var number) ? number : null;

    /// <summary>Changes to the machine file; null when they are none that could be meant.</summary>
    public IReadOnlyList<Change>? Changes()
    {
        if (!_document.RootElement.TryGetProperty("changes", out var list)) return [];
        if (list.ValueKind != JsonValueKind.Array || list.GetArrayLength() > MostChanges) return null;
        var changes = new List<Change>();
        foreach (var item in list.EnumerateArray())
        {
            if (item.ValueKind != JsonValueKind.Object || Text(item, "place") is not { Length: > 0 and < 200 } place) return null;
            changes.Add(new Change(place, Text(item, "was"), Text(item, "value")));
        }
        return changes;
    }

    public void Dispose() => _document.Dispose();

    private static string? Text(JsonElement element, string name) => element.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
}
