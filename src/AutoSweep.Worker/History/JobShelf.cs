using AutoSweep.Core;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.History;

/// <summary>The jobs in a folder of jobs, read without their locks; what cannot be read is told and passed over.</summary>
/// <param name="Folder">The folder.</param>
/// <param name="Jobs">Its jobs, the oldest first.</param>
/// <param name="PassedOver">Folders that hold no job that can be read, each with the reason.</param>
public sealed record JobShelf(string Folder, IReadOnlyList<JobReading> Jobs, IReadOnlyList<(string Folder, string Reason)> PassedOver)
{
    // Jobs may be sorted into folders by year or customer; deeper is another matter, such as a backup of a whole disk.
    private const int DeepestLevel = 3;

    /// <summary>Where jobs are looked for when nobody says: <c>jobs</c> here, else <c>jobs</c> in the shop's data folder.</summary>
    public static string DefaultFolder => Directory.Exists("jobs") ? "jobs" : Path.Combine(DataFolder.Default, "jobs");

    /// <summary>Reads every job under a folder; the folder may be a job itself.</summary>
    /// <exception cref="BenchFaultException">There is no such folder.</exception>
    public static JobShelf Read(string folder)
    {
        if (!Directory.Exists(folder))
            throw new BenchFaultException(
                BenchFault.BadFile, $"no folder {Path.GetFullPath(folder)}", "the folder in which the jobs' folders lie", "name another") { AtTerminal = "--jobs" };
        List<JobReading> jobs = [];
        List<(string, string)> passedOver = [];
        Look(folder, 0, jobs, passedOver);
        return new(Path.GetFullPath(folder), [.. jobs.OrderBy(job => job.State.OpenedAt)], passedOver);
    }

    /// <summary>A job by its folder, or by its name in this shelf's folder.</summary>
    /// <exception cref="BenchFaultException">There is no such job, or it is damaged.</exception>
    public static JobReading Find(string named, string? shelf) =>
        JobReading.Read(IsJob(named) || shelf is null ? named : Path.Combine(shelf, named));

    // True where nothing below was a job or a part of one.
    private static bool Look(string folder, int level, List<JobReading> jobs, List<(string, string)> passedOver)
    {
        if (IsJob(folder))
        {
            Take(folder, jobs, passedOver);
            return false;
        }

        var below = level < DeepestLevel ? Below(folder, passedOver) : [];
        List<(string, string)> foreign = [];
        var isForeign = true;
        foreach (var inner in below)
            isForeign &= Look(inner, level + 1, jobs, foreign);
        // A foreign folder is told once, not with every folder in it.
        if (!isForeign || level == 0)
            passedOver.AddRange(foreign);
        else
            passedOver.Add((folder, "no job in it (no journal.jsonl)"));
        return isForeign;
    }

    private static void Take(string folder, List<JobReading> jobs, List<(string, string)> passedOver)
    {
        try
        {
            jobs.Add(JobReading.Read(folder));
        }
        catch (BenchFaultException fault)
        {
            passedOver.Add((folder, fault.Found));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            passedOver.Add((folder, fault.Message));
        }
    }

    private static string[] Below(string folder, List<(string, string)> passedOver)
    {
        try
        {
            return [.. Directory.GetDirectories(folder).Order(StringComparer.Ordinal)];
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            passedOver.Add((folder, fault.Message));
            return [];
        }
    }

    private static bool IsJob(string folder) => File.Exists(Path.Combine(folder, "journal.jsonl"));
}
