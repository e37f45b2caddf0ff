using System.Net;
using Microsoft.AspNetCore.Http;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>Lets only requests through that this page's own screens make: the right name, the right origin, no proxy, no flood of bytes.</summary>
/// <param name="next">What comes after.</param>
/// <param name="options">How the page is served.</param>
public sealed class OriginGate(RequestDelegate next, BenchPageOptions options)
{
    // What proxies add: RFC 7239; RFC 9110, 7.6.3; the others are common practice, no source.
    private static readonly string[] ProxyHeaders = ["Forwarded", "Via", "X-Forwarded-For", "X-Forwarded-Host", "X-Forwarded-Proto", "X-Real-IP"];

    /// <summary>Answers a request that is not let through, or passes it on.</summary>
    public Task InvokeAsync(HttpContext context) => Refuse(context) is { } refusal ? refusal.WriteAsync(context) : next(context);

    private Refusal? Refuse(HttpContext context) =>
        NameOf(context) ?? ProxyOf(context.Request) ?? OriginOf(context.Request) ?? SiteOf(context.Request) ?? LengthOf(context.Request);

    private Refusal? NameOf(HttpContext context) =>
        TrustedHosts.Know(context.Request.Host, context.Connection.LocalIpAddress ?? IPAddress.None, context.Connection.LocalPort, options) ? null
        : new(StatusCodes.Status400BadRequest, $"the page asked for as \"{context.Request.Host}\"", TrustedHosts.Words(options),
            "Open the address that autosweep serve printed.");

    // Behind a proxy on this computer everybody would seem to sit at the bench, and without a token nothing else would hold them back.
    private Refusal? ProxyOf(HttpRequest request) =>
        options.NeedsToken || !ProxyHeaders.Any(request.Headers.ContainsKey) ? null
        : new(StatusCodes.Status403Forbidden, "a proxy between the screen and the bench page", "a browser on this computer",
            "Open the page without the proxy. For screens elsewhere start autosweep serve with --address, which asks them for a token.");

    // Browsers say where a script or form comes from with every change and every websocket (Fetch, "append a request Origin header"; RFC 6455, 4.1).
    private static Refusal? OriginOf(HttpRequest request)
    {
        var origin = request.Headers.Origin.ToString();
        var isNeeded = !(HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method)) || request.Headers.ContainsKey("Upgrade");
        if (origin.Length == 0 && !isNeeded || string.Equals(origin, $"{request.Scheme}://{request.Host}", StringComparison.OrdinalIgnoreCase))
            return null;
        return new(
            StatusCodes.Status403Forbidden, origin.Length == 0 ? "a change without an origin" : $"a request from {origin}",
            "a request from the bench page itself",
            "Work on the bench page, not through another one.");
    }

    // Fetch Metadata (W3C): none is an address typed or scanned.
    // Without the header an old browser, or one on plain http, is held by Origin and cookie alone.
    private static Refusal? SiteOf(HttpRequest request) =>
        request.Headers["Sec-Fetch-Site"].ToString() is "" or "none" or "same-origin" ? null
        : new(StatusCodes.Status403Forbidden, "a request that another page made", "the bench page's own, or an address typed by a person",
            "Type the page's address into the browser.");

    // Said before a byte of it is read.
    private static Refusal? LengthOf(HttpRequest request) =>
        request.ContentLength is null or <= PageLimits.RequestBody ? null
        : new(StatusCodes.Status413PayloadTooLarge, $"{request.ContentLength} bytes", $"at most {PageLimits.RequestBody} bytes", "Send less.");
}
