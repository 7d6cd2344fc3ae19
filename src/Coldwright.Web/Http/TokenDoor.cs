using Coldwright.Web.Access;
using Microsoft.AspNetCore.Http;

namespace Coldwright.Web.Http;

/// <summary>Where a visitor without the token is: a field to type it in, and the style sheets for that. Nothing about the cooler is said.</summary>
internal static class TokenDoor
{
    private static readonly SemaphoreSlim _oneAtATime = new(1);

    public static async Task Answer(HttpContext context, Gate gate, string path)
    {
        if (HttpMethods.IsGet(context.Request.Method) && path is "/files/page.css" or "/files/report.css")
        {
            var name = path["/files/".Length..];
            await Reply.Bytes(context, PageResources.Find(name), PageResources.TypeOf(name)).ConfigureAwait(false);
            return;
        }
        var given = await Given(context, path).ConfigureAwait(false);
        if (given is not null)
        {
            if (gate.Opens(given))
            {
                context.Response.Cookies.Append(Gate.Cookie, given, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", MaxAge = TimeSpan.FromDays(30) });
                await Clean(context).ConfigureAwait(false);
                return;
            }
            // Guessing is made slow, for all guessers together.
            await _oneAtATime.WaitAsync(context.RequestAborted).ConfigureAwait(false);
            try
            {
                await Task.Delay(400, context.RequestAborted).ConfigureAwait(false);
            }
            finally
            {
                _oneAtATime.Release();
            }
        }
        if (path.StartsWith("/api/", StringComparison.Ordinal)) await Reply.Problems(context, ["the token is missing or wrong"], StatusCodes.Status401Unauthorized).ConfigureAwait(false);
        else await Reply.Text(context, PageResources.Text("door.html").Replace("{{said}}", given is null ? "" : "That was not it.", StringComparison.Ordinal), "text/html; charset=utf-8", StatusCodes.Status401Unauthorized).ConfigureAwait(false);
    }

    /// <summary>To the page's address without a token in it.</summary>
    public static Task Clean(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = "/";
        return Task.CompletedTask;
    }

    private static async Task<string?> Given(HttpContext context, string path)
    {
        if (path != "/") return null;
        if (HttpMethods.IsGet(context.Request.Method)) return context.Request.Query["token"] is [{ Length: > 0 } first, ..] ? first : null;
        if (!HttpMethods.IsPost(context.Request.Method) || !context.Request.HasFormContentType) return null;
        var form = await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        return form["token"].ToString().Trim();
    }
}
