using System.Text.RegularExpressions;
using AutoSweep.PageHost.Tests.Support;

namespace AutoSweep.PageHost.Tests;

/// <summary>What every answer tells the browser (Content Security Policy Level 3, Fetch, Referrer Policy, Permissions Policy; all W3C or WHATWG).</summary>
public sealed partial class HeaderTests
{
    [Theory]
    [InlineData("/")]
    [InlineData("/nowhere")]
    [InlineData("/bench.js")]
    [InlineData("/files/page-token")]
    public async Task Every_answer_carries_the_policy(string path)
    {
        await using var page = await ServedPage.StartAsync();

        var answer = await page.GetAsync(path);

        var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));
        foreach (var rule in new[]
        {
            "default-src 'self'", "script-src 'self'", "style-src 'self'", "img-src 'self' data:", $"connect-src 'self' ws://127.0.0.1:{page.Port}",
            "frame-ancestors 'none'", "base-uri 'self'", "form-action 'self'",
        })
            Assert.Contains(rule, policy.Split("; "));
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
        Assert.Equal("same-origin", Assert.Single(answer.Headers.GetValues("Referrer-Policy")));
        Assert.NotEmpty(answer.Headers.GetValues("Permissions-Policy"));
        Assert.False(answer.Headers.Contains("Server"));
    }

    [Fact]
    public async Task A_page_is_never_kept_by_a_cache_and_holds_no_script_or_style_of_its_own()
    {
        await using var page = await ServedPage.StartAsync();

        var answer = await page.GetAsync("/");
        var text = await answer.Content.ReadAsStringAsync();

        Assert.True(answer.Headers.CacheControl!.NoStore);
        Assert.Contains("guard.", text, StringComparison.Ordinal);
        Assert.DoesNotMatch(OwnScript(), text);
        Assert.DoesNotMatch(OwnStyle(), text);
        Assert.DoesNotMatch(Elsewhere(), text);
    }

    [GeneratedRegex(@"<script(?![^>]*\ssrc=)|\son[a-z]+=", RegexOptions.IgnoreCase)]
    private static partial Regex OwnScript();

    [GeneratedRegex(@"<style|\sstyle=", RegexOptions.IgnoreCase)]
    private static partial Regex OwnStyle();

    [GeneratedRegex(@"(src|href)=""(https?:)?//", RegexOptions.IgnoreCase)]
    private static partial Regex Elsewhere();
}
