using System.Net;
using AutoSweep.PageHost.Tests.Support;

namespace AutoSweep.PageHost.Tests;

/// <summary>Who may ask: Host (RFC 9110, 7.2), Origin (RFC 6454; RFC 6455, 4.1) and Fetch Metadata (W3C) of real requests to the real host.</summary>
public sealed class OriginTests
{
    [Theory]
    [InlineData("127.0.0.1:PORT", HttpStatusCode.OK)]
    [InlineData("localhost:PORT", HttpStatusCode.OK)]
    [InlineData("LOCALHOST:PORT", HttpStatusCode.OK)]
    [InlineData("rebound.example:PORT", HttpStatusCode.BadRequest)]
    [InlineData("rebound.example", HttpStatusCode.BadRequest)]
    [InlineData("localhost.rebound.example:PORT", HttpStatusCode.BadRequest)]
    [InlineData("127.0.0.1.rebound.example:PORT", HttpStatusCode.BadRequest)]
    [InlineData("127.0.0.1:1", HttpStatusCode.BadRequest)]
    [InlineData("127.0.0.1", HttpStatusCode.BadRequest)]
    [InlineData("192.0.2.7:PORT", HttpStatusCode.BadRequest)]
    [InlineData("0.0.0.0:PORT", HttpStatusCode.BadRequest)]
    public async Task The_page_answers_only_to_this_computers_names_with_its_own_port(string host, HttpStatusCode expected)
    {
        await using var page = await ServedPage.StartAsync();

        Assert.Equal(expected, (await page.GetAsync("/", ("Host", host))).StatusCode);
        Assert.Equal(expected, (await page.GetAsync("/bench.css", ("Host", host))).StatusCode);
    }

    [Fact]
    public async Task A_request_without_a_name_or_with_two_is_refused()
    {
        await using var page = await ServedPage.StartAsync();

        Assert.StartsWith("HTTP/1.1 400", await page.RawAsync("GET / HTTP/1.1"), StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 400", await page.RawAsync("GET / HTTP/1.1", "Host: 127.0.0.1:PORT", "Host: rebound.example"), StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 400", await page.RawAsync("GET http://rebound.example/ HTTP/1.1", "Host: 127.0.0.1:PORT"), StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 400", await page.RawAsync("GET / HTTP/1.0"), StringComparison.Ordinal);
    }

    public static TheoryData<string?> ForeignOrigins => [null, "null", "http://elsewhere.example", "https://127.0.0.1:PORT", "http://127.0.0.1:1", "http://localhost:PORT", "http://127.0.0.1:PORT.elsewhere.example"];

    [Theory]
    [MemberData(nameof(ForeignOrigins))]
    public async Task A_change_from_another_origin_or_from_none_is_refused(string? origin)
    {
        await using var page = await ServedPage.StartAsync();
        (string, string)[] headers = origin is null ? [] : [("Origin", origin)];

        foreach (var path in new[] { "/", "/_blazor/negotiate?negotiateVersion=1", "/_blazor/disconnect", "/files/report.html" })
        {
            foreach (var method in new[] { HttpMethod.Post, HttpMethod.Put, HttpMethod.Delete, HttpMethod.Options })
                Assert.Equal(HttpStatusCode.Forbidden, (await page.SendAsync(method, path, null, headers)).StatusCode);
        }
    }

    [Theory]
    [MemberData(nameof(ForeignOrigins))]
    public async Task A_websocket_from_another_origin_or_from_none_is_refused(string? origin)
    {
        await using var page = await ServedPage.StartAsync();

        var answer = await page.RawAsync([.. Websocket, .. origin is null ? [] : new[] { $"Origin: {origin}" }]);

        Assert.StartsWith("HTTP/1.1 403", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_change_and_a_websocket_of_the_page_itself_are_let_through()
    {
        await using var page = await ServedPage.StartAsync();

        var negotiated = await page.SendAsync(HttpMethod.Post, "/_blazor/negotiate?negotiateVersion=1", null, ("Origin", page.Origin));
        using var socket = await page.ConnectAsync();
        await socket.SendAsync(System.Text.Encoding.ASCII.GetBytes(
            string.Join("\r\n", [.. Websocket, $"Origin: {page.Origin}", "", ""]).Replace("PORT", $"{page.Port}", StringComparison.Ordinal)));
        using var reader = new StreamReader(new System.Net.Sockets.NetworkStream(socket));

        Assert.Equal(HttpStatusCode.OK, negotiated.StatusCode);
        Assert.Equal("HTTP/1.1 101 Switching Protocols", await Patience.WithinAsync(reader.ReadLineAsync()));
    }

    [Theory]
    [InlineData("cross-site", HttpStatusCode.Forbidden)]
    [InlineData("same-site", HttpStatusCode.Forbidden)]
    [InlineData("same-origin", HttpStatusCode.OK)]
    [InlineData("none", HttpStatusCode.OK)]
    public async Task What_a_browser_says_that_another_site_asked_for_is_refused(string site, HttpStatusCode expected)
    {
        await using var page = await ServedPage.StartAsync();

        Assert.Equal(expected, (await page.GetAsync("/", ("Sec-Fetch-Site", site))).StatusCode);
    }

    [Theory]
    [InlineData("Forwarded", "for=192.0.2.9")]
    [InlineData("X-Forwarded-For", "192.0.2.9")]
    [InlineData("X-Real-IP", "192.0.2.9")]
    [InlineData("Via", "1.1 elsewhere")]
    public async Task Whoever_comes_through_a_proxy_is_not_taken_for_somebody_at_the_bench(string header, string value)
    {
        await using var page = await ServedPage.StartAsync();

        Assert.Equal(HttpStatusCode.Forbidden, (await page.GetAsync("/", (header, value))).StatusCode);
    }

    [Fact]
    public async Task A_form_without_the_pages_own_antiforgery_token_changes_nothing()
    {
        await using var page = await ServedPage.StartAsync();
        using var form = new FormUrlEncodedContent([new("_handler", "anything")]);

        Assert.Equal(HttpStatusCode.BadRequest, (await page.SendAsync(HttpMethod.Post, "/", form, ("Origin", page.Origin))).StatusCode);
    }

    private static readonly string[] Websocket =
    [
        "GET /_blazor HTTP/1.1", "Host: 127.0.0.1:PORT", "Connection: Upgrade", "Upgrade: websocket", "Sec-WebSocket-Version: 13",
        // The example of RFC 6455, 1.3.
        "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==",
    ];
}
