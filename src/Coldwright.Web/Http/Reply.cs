using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Microsoft.AspNetCore.Http;

namespace Coldwright.Web.Http;

/// <summary>Answers of the server.</summary>
internal static class Reply
{
    private const string JsonType = "application/json; charset=utf-8";

    private static readonly JsonWriterOptions _options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static async Task Json(HttpContext context, Action<Utf8JsonWriter> write, int status = StatusCodes.Status200OK)
    {
        using var buffer = new ReplyBuffer();
        Fill(buffer, write);
        await Bytes(context, buffer.Written, JsonType, status).ConfigureAwait(false);
    }

    /// <summary>Bytes that were written before by <see cref="JsonBytes"/>.</summary>
    public static Task Json(HttpContext context, ReadOnlyMemory<byte> bytes) => Bytes(context, bytes, JsonType);

    /// <summary>A document of its own, to be kept.</summary>
    public static byte[] JsonBytes(Action<Utf8JsonWriter> write)
    {
        using var buffer = new ReplyBuffer();
        Fill(buffer, write);
        return buffer.Written.ToArray();
    }

    /// <summary>What was wrong with a request, in sentences.</summary>
    public static Task Problems(HttpContext context, IEnumerable<string> problems, int status = StatusCodes.Status400BadRequest) => Json(context, w =>
    {
        w.WriteStartObject();
        w.WriteStartArray("problems");
        foreach (var problem in problems) w.WriteStringValue(problem);
        w.WriteEndArray();
        w.WriteEndObject();
    }, status);

    public static Task Text(HttpContext context, string text, string type, int status = StatusCodes.Status200OK) => Bytes(context, Encoding.UTF8.GetBytes(text), type, status);

    public static async Task Bytes(HttpContext context, ReadOnlyMemory<byte> bytes, string type, int status = StatusCodes.Status200OK)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = type;
        context.Response.ContentLength = bytes.Length;
        if (!HttpMethods.IsHead(context.Request.Method)) await context.Response.Body.WriteAsync(bytes, context.RequestAborted).ConfigureAwait(false);
    }

    private static void Fill(ReplyBuffer buffer, Action<Utf8JsonWriter> write)
    {
        using var writer = new Utf8JsonWriter(buffer, _options);
        write(writer);
    }
}
