using System.Net;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Http;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>The link and its picture on the bench computer's own screen, for a screen that is to be let in.</summary>
public static class LetInPage
{
    /// <summary>Shows them, on this computer only: who was let in from elsewhere lets nobody else in.</summary>
    public static Task ShowAsync(HttpContext context, BenchPageOptions options, PageToken token)
    {
        if (!IsHere(context.Connection))
        {
            return new Refusal(StatusCodes.Status403Forbidden, "a screen elsewhere", "the bench computer's own screen",
                "Open /let-in there.").WriteAsync(context);
        }

        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync(Text(EntranceLinks.For(options.Address, context.Connection.LocalPort, token)), context.RequestAborted);
    }

    // A connection of this computer to itself has the same address at both ends (or is loopback).
    private static bool IsHere(ConnectionInfo connection) => connection.RemoteIpAddress is { } remote
        && (IPAddress.IsLoopback(remote) || remote.Equals(connection.LocalIpAddress));

    private static string Text(IEnumerable<string> links) => $"""
        <!DOCTYPE html>
        <html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Let a screen in</title>
        <link rel="icon" href="data:,"><link rel="stylesheet" href="/bench.css"></head>
        <body><main><h1>Let another screen in</h1>
        <p class="caution">Whoever has this link may work at this bench. Show it to nobody else, and close this page afterwards.</p>
        {string.Concat(links.Select(Card))}
        <p><a href="/">Back to the bench</a></p></main></body></html>
        """;

    private static string Card(string link) =>
        $"<div class=\"card\">{EntranceLinks.Svg(link)}<p><code>{HtmlEncoder.Default.Encode(link)}</code></p></div>";
}
