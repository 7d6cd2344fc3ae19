using Microsoft.AspNetCore.Http;

namespace Coldwright.Web.Access;

/// <summary>What every answer tells the browser: nothing from outside, no frame around it, nothing kept by others.</summary>
internal static class SafeHeaders
{
    public static void Write(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.CacheControl = "no-store";
    }
}
