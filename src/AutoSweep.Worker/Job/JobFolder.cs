using AutoSweep.Core;

namespace AutoSweep.Worker.Job;

/// <summary>The folder that holds everything of one job, locked for this program as long as it is open.</summary>
public sealed class JobFolder : IDisposable
{
    private readonly FileStream _lock;

    private JobFolder(string path, FileStream held) => (Path, _lock) = (path, held);

    /// <summary>The folder's full path.</summary>
    public string Path { get; }

    /// <summary>The journal, the job's one truth.</summary>
    public string Journal => System.IO.Path.Combine(Path, "journal.jsonl");

    /// <summary>The sweep's results as CSV, folded from the journal.</summary>
    public string Sweeps => System.IO.Path.Combine(Path, "sweeps.csv");

    /// <summary>The survey's results as CSV, folded from the journal.</summary>
    public string Survey => System.IO.Path.Combine(Path, "survey.csv");

    /// <summary>The last survey's results as CSV, folded from the journal.</summary>
    public string AsLeft => System.IO.Path.Combine(Path, "as-left.csv");

    /// <summary>All results as JSON, folded from the journal.</summary>
    public string Results => System.IO.Path.Combine(Path, "results.json");

    /// <summary>The picking list of the latest match, without the ending: there is a CSV and a JSON file of it.</summary>
    public string PickingList => System.IO.Path.Combine(Path, "picking-list");

    /// <summary>The rolling log's name pattern.</summary>
    public string Log => System.IO.Path.Combine(Path, "log", "autosweep-.log");

    /// <summary>Opens or makes the folder and takes its lock.</summary>
    /// <param name="path">The folder.</param>
    /// <exception cref="BenchFaultException">Another program works in it, or it cannot be made.</exception>
    public static JobFolder Open(string path)
    {
        var full = System.IO.Path.GetFullPath(path);
        try
        {
            Directory.CreateDirectory(full);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BenchFaultException(BenchFault.BadFile, $"the job folder {full} cannot be made ({fault.Message})",
                "a folder that this user may write", "mend the permissions, or name another folder", fault) { AtTerminal = "--job" };
        }

        return new(full, Take(System.IO.Path.Combine(full, "job.lock"), full));
    }

    /// <inheritdoc/>
    public void Dispose() => _lock.Dispose();

    // The kernel drops the lock when its holder dies, however it dies: no stale lock is ever left behind.
    private static FileStream Take(string file, string folder)
    {
        try
        {
            return new(file, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BenchFaultException(BenchFault.JobInUse, $"another AutoSweep works in {folder} (it holds job.lock)",
                "a job folder that nobody else works in", "close the other one first, or name another folder", fault) { AtTerminal = "--job" };
        }
    }
}
