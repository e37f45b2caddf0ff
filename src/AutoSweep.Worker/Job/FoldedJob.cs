using AutoSweep.Core;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Job;

/// <summary>A job as its journal stands on disk now, for who only reads.</summary>
public static class FoldedJob
{
    /// <summary>Reads without the job's lock, so that a running stage is not in the way; lines that cannot be trusted do not count.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <exception cref="BenchFaultException">There is no job in it.</exception>
    public static JobState Read(string folder)
    {
        var path = Path.GetFullPath(folder);
        var entries = JournalFile.Read(Path.Combine(path, "journal.jsonl")).Entries;
        var state = entries.Aggregate(JobState.Empty, (known, entry) => known.Apply(entry));
        return state.Profile is null
            ? throw new BenchFaultException(BenchFault.BadFile, $"no job in {path}", "a job folder, with its journal.jsonl", "name another with --job")
            : state;
    }
}
