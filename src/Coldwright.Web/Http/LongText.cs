using System.Text.Json;

namespace Coldwright.Web.Http;

/// <summary>Long texts in JSON.</summary>
internal static class LongText
{
    private const int Piece = 4096;

    /// <summary>Writes a member piece by piece; as a whole the writer would borrow six times its length for it, and the pool keep that.</summary>
    public static void WriteLong(this Utf8JsonWriter writer, string name, string text)
    {
        writer.WritePropertyName(name);
        for (var at = 0; at < text.Length - Piece; at += Piece) writer.WriteStringValueSegment(text.AsSpan(at, Piece), isFinalSegment: false);
        writer.WriteStringValueSegment(text.AsSpan(text.Length == 0 ? 0 : (text.Length - 1) / Piece * Piece), isFinalSegment: true);
    }
}
