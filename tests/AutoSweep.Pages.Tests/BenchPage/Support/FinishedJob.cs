using AutoSweep.Pages.Tests.Support;

namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>A data folder in which the demo's finished job, its stock and the shop's own files lie.</summary>
internal static class FinishedJob
{
    /// <summary>The job's name.</summary>
    public const string Name = "demo";

    /// <summary>Copies the demo's job into a new data folder.</summary>
    public static string CopyOf(DemoRecord record)
    {
        var data = Directory.CreateTempSubdirectory("autosweep-page-").FullName;
        var job = Path.Combine(data, "jobs", Name);
        foreach (var file in Directory.EnumerateFiles(record.Folder, "*", SearchOption.AllDirectories).Where(file => Path.GetFileName(file) != "job.lock"))
        {
            var copy = Path.Combine(job, Path.GetRelativePath(record.Folder, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        File.Copy(Path.Combine(job, "stock.jsonl"), Path.Combine(data, "stock.jsonl"));
        File.WriteAllText(Path.Combine(data, "last-job.txt"), Name);
        return data;
    }

    /// <summary>Every page, by its address.</summary>
    public static IReadOnlyList<string> Pages { get; } = ["", "jobs", "history", "stock", "parts", "levels", "record", "wiring", "not-there"];
}
