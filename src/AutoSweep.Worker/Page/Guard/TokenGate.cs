using Microsoft.AspNetCore.Http;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>Lets only screens through that entered with the token, wherever they stand.</summary>
/// <remarks>This computer's own browser too: what arrives over loopback may come from a proxy or a tunnel that somebody else sits behind.</remarks>
/// <param name="next">What comes after.</param>
/// <param name="token">The token.</param>
public sealed class TokenGate(RequestDelegate next, PageToken token)
{
    /// <summary>The cookie of a screen that was let in.</summary>
    public const string CookieName = "autosweep-screen";

    /// <summary>Where a screen enters.</summary>
    public const string Entrance = "/enter";

    // Long enough for a bench's own tablet; after that its link is scanned again.
    private static readonly TimeSpan Stay = TimeSpan.FromDays(90);

    /// <summary>Answers a request of a screen that was not let in, or passes it on.</summary>
    public Task InvokeAsync(HttpContext context) =>
        context.Request.Path == Entrance || token.IsCookie(context.Request.Cookies[CookieName])
            ? next(context) : RefuseAsync(context, "a screen that was not let in");

    /// <summary>Lets a screen in that brings the token, and takes the token out of its address.</summary>
    public static Task EnterAsync(HttpContext context, PageToken token)
    {
        if (!token.Is(context.Request.Query["token"]))
            return RefuseAsync(context, "a link with another token, or none");
        context.Response.Cookies.Append(
            CookieName, token.Cookie, new() { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", MaxAge = Stay });
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = "/";
        context.Response.Headers.CacheControl = "no-store";
        return Task.CompletedTask;
    }

    private static Task RefuseAsync(HttpContext context, string found)
    {
        // RFC 9110, 11.6.1 wants one with every 401; no browser asks for a password at a scheme that it does not know.
        context.Response.Headers.WWWAuthenticate = "AutoSweep-Link";
        return new Refusal(StatusCodes.Status401Unauthorized, found, "the link with the token that autosweep serve shows when it starts",
            "At the bench computer read the link or scan the picture: on its terminal, or on its screen at /let-in.").WriteAsync(context);
    }
}
