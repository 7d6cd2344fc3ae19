using System.Text;
using System.Text.Json;
using Coldwright.Report;
using Microsoft.AspNetCore.Http;

namespace Coldwright.Web.Http;

/// <summary>Answers of the server.</summary>
internal static class Reply
{
    public static Task Json(HttpContext context, Action<Utf8JsonWriter> write, int status = StatusCodes.Status200OK) => Text(context, Coldwright.Report.Json.Text(write), "application/json; charset=utf-8", status);

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
}
