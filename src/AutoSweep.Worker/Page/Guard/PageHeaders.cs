using Microsoft.AspNetCore.Http;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>Tells the browser with every answer what a page may do: load and talk to nothing but this page's own host.</summary>
/// <param name="next">What comes after.</param>
public sealed class PageHeaders(RequestDelegate next)
{
    /// <summary>The policy of a page (Content Security Policy Level 3, W3C).</summary>
    /// <param name="host">The page's host and port; a websocket to it is named as well, because not every browser counts ws: under 'self'.</param>
    public static string Policy(HostString host) =>
        "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; "
        + $"connect-src 'self' ws://{host}; object-src 'none'; frame-ancestors 'none'; base-uri 'self'; form-action 'self'";

    /// <summary>Sets the headers just before the answer begins, so that nothing after this can leave them out.</summary>
    public Task InvokeAsync(HttpContext context)
    {
        context.Response.OnStarting(() =>
        {
            Set(context);
            return Task.CompletedTask;
        });
        return next(context);
    }

    private static void Set(HttpContext context)
    {
        var headers = context.Response.Headers;
        // A file of the job has its own, stricter one.
        if (headers.ContentSecurityPolicy.Count == 0)
            headers.ContentSecurityPolicy = Policy(context.Request.Host);
        headers.XContentTypeOptions = "nosniff";
        // Not no-referrer: with that a browser sends Origin "null" with forms and beacons (Fetch, "append a request Origin header"),
        // and Origin could not be held
        // against ours. No other host learns a thing either way.
        headers["Referrer-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=(), serial=(), usb=(), payment=()";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        if (context.Response.ContentType?.StartsWith("text/html", StringComparison.Ordinal) == true)
            headers.CacheControl = "no-store";
    }
}
