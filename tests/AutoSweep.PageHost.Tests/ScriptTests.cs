using System.Net;
using AutoSweep.Core;
using AutoSweep.PageHost.Tests.Support;
using AutoSweep.Worker.Page.Shared;
using AutoSweep.Worker.Page.Work;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.PageHost.Tests;

/// <summary>Script where a name is expected: refused, and harmless where it is shown.</summary>
public sealed class ScriptTests
{
    private const string Script = "<script>alert(1)</script>";

    [Theory]
    [InlineData(Script)]
    [InlineData("\"><img src=x onerror=alert(1)>")]
    [InlineData("' onmouseover='alert(1)")]
    [InlineData("javascript:alert(1)")]
    public async Task Script_as_the_name_of_a_job_is_refused_and_shown_as_text(string name)
    {
        await using var page = await ServedPage.StartAsync();

        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => page.BeginJobAsync(name));
        var shown = await ShowAsync(fault);

        Assert.Empty(Directory.GetFileSystemEntries(page.Desk.Options.Jobs));
        Assert.DoesNotContain("<script", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", shown, StringComparison.Ordinal);
        Assert.Contains(WebUtility.HtmlEncode(name)[..4], shown.Replace("&#x27;", "&#39;", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Script_in_a_request_comes_back_as_text()
    {
        await using var page = await ServedPage.StartAsync();

        var refused = await page.RawAsync("POST / HTTP/1.1", "Host: 127.0.0.1:PORT", $"Origin: http://{Script}", "Content-Length: 0");
        var nowhere = await (await page.GetAsync("/" + Uri.EscapeDataString(Script))).Content.ReadAsStringAsync();

        Assert.Contains("&lt;script&gt;", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("<script>alert", refused + nowhere, StringComparison.Ordinal);
    }

    private static async Task<string> ShowAsync(Exception fault)
    {
        await using var services = new ServiceCollection().BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        return await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<FaultCard>(
            ParameterView.FromDictionary(new Dictionary<string, object?> { [nameof(FaultCard.Fault)] = fault }))).ToHtmlString());
    }
}
