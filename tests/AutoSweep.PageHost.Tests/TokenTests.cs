using System.Buffers.Text;
using System.Net;
using AutoSweep.Core;
using AutoSweep.PageHost.Tests.Support;
using AutoSweep.Worker.Page.Guard;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.PageHost.Tests;

/// <summary>The page listening to other computers: nobody is let in without the token, not even from this computer.</summary>
public sealed class TokenTests
{
    [Theory]
    [InlineData("/")]
    [InlineData("/bench.css")]
    [InlineData("/files/report.html")]
    [InlineData("/_blazor")]
    [InlineData("/let-in")]
    [InlineData("/enter/")]
    [InlineData("/ENTER/../let-in")]
    public async Task A_screen_without_the_cookie_is_told_what_to_do_and_nothing_else(string path)
    {
        await using var page = await ServedPage.StartAsync(withToken: true);

        var answer = await page.GetAsync(path);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.NotEmpty(answer.Headers.WwwAuthenticate);
        Assert.Contains("What to do", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("?token=")]
    [InlineData("?token=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("?Token[]=x&token=a&token=b")]
    public async Task A_wrong_token_lets_nobody_in(string query)
    {
        await using var page = await ServedPage.StartAsync(withToken: true);

        var answer = await page.GetAsync("/enter" + query);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
        Assert.False(answer.Headers.Contains("Set-Cookie"));
    }

    [Fact]
    public async Task The_token_lets_a_screen_in_and_is_gone_from_its_address()
    {
        await using var page = await ServedPage.StartAsync(withToken: true);

        var entered = await page.GetAsync($"/enter?token={page.Token.Text}");
        var cookie = Assert.Single(entered.Headers.GetValues("Set-Cookie"));

        Assert.Equal((HttpStatusCode.SeeOther, "/"), (entered.StatusCode, entered.Headers.Location!.OriginalString));
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(page.Token.Text, cookie, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await page.GetAsync("/", ("Cookie", cookie.Split(';')[0]))).StatusCode);
    }

    [Fact]
    public async Task A_cookie_that_only_looks_right_lets_nobody_in()
    {
        await using var page = await ServedPage.StartAsync(withToken: true);

        foreach (var value in new[] { page.Token.Text, page.Token.Cookie[..^1], page.Token.Cookie + "A", "", "%00" })
            Assert.Equal(HttpStatusCode.Unauthorized, (await page.GetAsync("/", ("Cookie", $"{TokenGate.CookieName}={value}"))).StatusCode);
    }

    [Fact]
    public async Task After_ten_tries_within_a_minute_even_the_right_token_waits()
    {
        await using var page = await ServedPage.StartAsync(withToken: true);
        for (var count = 0; count < 10; count++)
            Assert.Equal(HttpStatusCode.Unauthorized, (await page.GetAsync("/enter?token=x")).StatusCode);

        Assert.Equal(HttpStatusCode.TooManyRequests, (await page.GetAsync($"/enter?token={page.Token.Text}")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await page.GetAsync("/", ("Cookie", page.Cookie))).StatusCode);
    }

    [Fact]
    public async Task The_bench_computers_own_screen_shows_the_link_and_its_picture()
    {
        await using var page = await ServedPage.StartAsync(withToken: true);

        var text = await (await page.GetAsync("/let-in", ("Cookie", page.Cookie))).Content.ReadAsStringAsync();

        Assert.Contains("<svg", text, StringComparison.Ordinal);
        Assert.Contains($"/enter?token={page.Token.Text}", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_for_this_computer_alone_has_no_token_and_no_entrance()
    {
        await using var page = await ServedPage.StartAsync();

        Assert.False(File.Exists(Path.Combine(page.Data, PageToken.FileName)));
        Assert.Equal(HttpStatusCode.NotFound, (await page.GetAsync("/enter?token=x")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await page.GetAsync("/let-in")).StatusCode);
    }

    [Fact]
    public void A_token_has_256_bits_stays_over_a_restart_and_only_its_owner_may_read_it()
    {
        using var folder = new TemporaryFolder();
        var token = PageToken.Open(folder.Path);

        Assert.Equal(32, Base64Url.DecodeFromChars(token.Text).Length);
        Assert.Equal(token.Text, PageToken.Open(folder.Path).Text);
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(folder.File(PageToken.FileName)));
    }

    [Fact]
    public void A_new_token_ends_the_links_and_cookies_of_the_one_before()
    {
        using var folder = new TemporaryFolder();
        var (before, after) = (PageToken.Open(folder.Path), PageToken.Make(folder.Path));

        Assert.False(after.Is(before.Text));
        Assert.False(after.IsCookie(before.Cookie));
        Assert.Equal(after.Text, PageToken.Open(folder.Path).Text);
    }

    [Theory]
    [InlineData("")]
    [InlineData("short")]
    [InlineData("not base64url, and not of the length of a token")]
    public void A_file_that_holds_no_token_is_refused_and_never_taken_for_one(string text)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder.File(PageToken.FileName), text);

        Assert.Contains("--new-token", Assert.Throws<BenchFaultException>(() => PageToken.Open(folder.Path)).AtTerminal, StringComparison.Ordinal);
    }
}
