using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Http;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>Why a request is not let through, as every part of the program tells it.</summary>
/// <param name="Status">The status (RFC 9110, 15.5).</param>
/// <param name="Found">What came.</param>
/// <param name="Expected">What would have been let through.</param>
/// <param name="WhatToDo">What the person can do.</param>
public sealed record Refusal(int Status, string Found, string Expected, string WhatToDo)
{
    /// <summary>Answers a request with a plain page; nothing that came with the request is written unescaped.</summary>
    public Task WriteAsync(HttpContext context)
    {
        context.Response.StatusCode = Status;
        context.Response.ContentType = "text/html; charset=utf-8";
        // Whatever else the sender has ready is not waited for.
        context.Response.Headers.Connection = "close";
        return context.Response.WriteAsync(Text(), context.RequestAborted);
    }

    private string Text() => $"""
        <!DOCTYPE html>
        <html lang="en">
        <head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Not let in</title></head>
        <body><h1>Not let in</h1>
        <p><strong>Found</strong> {Plain(Found)}</p>
        <p><strong>Expected</strong> {Plain(Expected)}</p>
        <p><strong>What to do</strong> {Plain(WhatToDo)}</p>
        </body></html>
        """;

    private static string Plain(string text) => HtmlEncoder.Default.Encode(text);
}
