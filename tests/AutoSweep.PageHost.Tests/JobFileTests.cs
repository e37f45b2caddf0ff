using System.Net;
using AutoSweep.PageHost.Tests.Support;
using AutoSweep.Worker.Page.Guard;

namespace AutoSweep.PageHost.Tests;

/// <summary>Files over the wire: the listed ones of the open job, and nothing else on this computer.</summary>
public sealed class JobFileTests
{
    private const string Secret = "what lies outside of the job";

    public static TheoryData<string> Ways =>
    [
        "/files/../stock.jsonl", "/files/..%2fstock.jsonl", "/files/..%2Fstock.jsonl", "/files/..%2f..%2fstock.jsonl", "/files/%2e%2e/stock.jsonl",
        "/files/%2e%2e%2f%2e%2e%2fstock.jsonl", "/files/..%5cstock.jsonl", "/files/..%5c..%5cstock.jsonl", "/files/%252e%252e%252fstock.jsonl",
        "/files/..%c0%afstock.jsonl", "/files/..%e0%80%afstock.jsonl", "/files/..%u2215stock.jsonl", "/files/....//....//stock.jsonl",
        "/files/report.html/../../../stock.jsonl", "/files/report.html%00", "/files/stock.jsonl%00report.html", "/files/%2fetc%2fpasswd", "/files//etc/passwd",
        "/files/file:%2f%2f%2fetc%2fpasswd", "/files/C:%5cWindows%5cwin.ini", "/files/job.lock", "/files/secret.txt", "/files/REPORT.HTML", "/files/report.html.",
        "/files/report.html::$DATA", "/files/log", "/files/.", "/files/", "/../stock.jsonl", "/..%2fstock.jsonl", "/_framework/..%2f..%2fstock.jsonl",
    ];

    [Theory]
    [MemberData(nameof(Ways))]
    public async Task No_way_of_writing_a_name_leads_out_of_the_list(string target)
    {
        await using var page = await ServedPage.StartAsync();
        await page.BeginJobAsync();
        var job = page.Desk.Job!.Folder.Path;
        foreach (var path in new[] { "stock.jsonl", "page-token", "jobs/stock.jsonl" })
            await File.WriteAllTextAsync(Path.Combine(page.Data, path), Secret);
        foreach (var name in new[] { "secret.txt", "stock.jsonl", "report.html" })
            await File.WriteAllTextAsync(Path.Combine(job, name), Secret);

        var answer = await page.RawAsync($"GET {target} HTTP/1.1", "Host: 127.0.0.1:PORT", "Connection: close");

        Assert.DoesNotContain(Secret, answer, StringComparison.Ordinal);
        Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
        Assert.Matches("^HTTP/1.1 4", answer);
    }

    [Fact]
    public async Task The_listed_files_of_the_open_job_come_with_their_type_and_are_not_run()
    {
        await using var page = await ServedPage.StartAsync();
        await page.BeginJobAsync();
        foreach (var name in JobFiles.Names)
        {
            if (name != "journal.jsonl")
                await File.WriteAllTextAsync(Path.Combine(page.Desk.Job!.Folder.Path, name), "text");
            var answer = await page.GetAsync($"/files/{name}");
            var policy = Assert.Single(answer.Headers.GetValues("Content-Security-Policy"));

            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
            Assert.True(answer.Headers.CacheControl!.NoStore);
            Assert.Equal(TypeOf(name), answer.Content.Headers.ContentType!.MediaType);
            Assert.Equal(!name.EndsWith(".html", StringComparison.Ordinal), answer.Content.Headers.ContentDisposition?.DispositionType == "attachment");
            Assert.Equal(name.EndsWith(".html", StringComparison.Ordinal), policy.Contains("default-src 'none'", StringComparison.Ordinal));
            Assert.Contains(name == "journal.jsonl" ? "\"sequence\":1" : "text", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_link_in_the_job_folder_is_not_followed_and_without_a_job_there_are_no_files()
    {
        await using var page = await ServedPage.StartAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await page.GetAsync("/files/report.html")).StatusCode);
        await page.BeginJobAsync();
        await File.WriteAllTextAsync(Path.Combine(page.Data, "outside"), Secret);
        File.CreateSymbolicLink(Path.Combine(page.Desk.Job!.Folder.Path, "report.html"), Path.Combine(page.Data, "outside"));

        Assert.Equal(HttpStatusCode.NotFound, (await page.GetAsync("/files/report.html")).StatusCode);
    }

    // RFC 2046, 7111/4180, 8259, as the names' endings say.
    private static string TypeOf(string name) => Path.GetExtension(name) switch
    {
        ".html" => "text/html", ".csv" => "text/csv", ".json" => "application/json", _ => "application/octet-stream",
    };
}
