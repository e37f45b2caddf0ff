using AutoSweep.Worker.Page.Work;
using Microsoft.AspNetCore.Http;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>The files of the open job that a screen may fetch: the names listed here, and nothing else.</summary>
public static class JobFiles
{
    // A record is one file with its styles and pictures in it, and no script.
    private const string RecordPolicy =
        "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; "
        + "frame-ancestors 'none'; base-uri 'none'; form-action 'none'; sandbox";

    private const string Html = "text/html; charset=utf-8";
    private const string Csv = "text/csv; charset=utf-8";
    private const string Json = "application/json; charset=utf-8";

    private static readonly Dictionary<string, string> Types = new(StringComparer.Ordinal)
    {
        ["report.html"] = Html, ["report-customer.html"] = Html, ["report.csv"] = Csv, ["report.json"] = Json,
        ["survey.csv"] = Csv, ["sweeps.csv"] = Csv, ["as-left.csv"] = Csv, ["picking-list.csv"] = Csv, ["picking-list.json"] = Json,
        ["results.json"] = Json,
        // No registered type (a line of JSON each); never shown, only saved.
        ["journal.jsonl"] = "application/octet-stream",
    };

    /// <summary>The names that are served.</summary>
    public static IReadOnlyCollection<string> Names => Types.Keys;

    /// <summary>Answers with a file, or says that there is none.</summary>
    /// <param name="context">The request.</param>
    /// <param name="desk">The desk with the open job.</param>
    /// <param name="name">The name, as it came; it is looked up, never made into a path.</param>
    public static IResult Fetch(HttpContext context, Desk desk, string name)
    {
        // The path is made of the list's own word. A link in the job folder is not followed.
        if (desk.Job is not { } job || Types.Keys.FirstOrDefault(known => known == name) is not { } listed
            || new FileInfo(Path.Combine(job.Folder.Path, listed)) is not { Exists: true, LinkTarget: null } file)
            return Results.NotFound();
        var isRecord = Types[listed] == Html;
        context.Response.Headers.CacheControl = "no-store";
        if (isRecord)
            context.Response.Headers.ContentSecurityPolicy = RecordPolicy;
        // The journal is written to all the while.
        var stream = new FileStream(
            file.FullName, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 4096, useAsync: true);
        return Results.Stream(stream, Types[listed], isRecord ? null : listed);
    }
}
