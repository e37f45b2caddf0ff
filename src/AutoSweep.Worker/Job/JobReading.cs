using AutoSweep.Core;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Job;

/// <summary>A job as its journal tells it, read without its lock: a report must not stop a running sweep.</summary>
/// <param name="Folder">The job folder's full path.</param>
/// <param name="Entries">The journal's entries in order.</param>
/// <param name="State">What they fold to.</param>
public sealed record JobReading(string Folder, IReadOnlyList<JournalEntry> Entries, JobState State)
{
    /// <summary>The folder's own name: what the shop calls the job.</summary>
    public string Name => Path.GetFileName(Path.TrimEndingDirectorySeparator(Folder));

    /// <summary>Reads a job.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <exception cref="BenchFaultException">No job there, or a damaged journal; names each damaged line.</exception>
    public static JobReading Read(string folder)
    {
        var full = Path.GetFullPath(folder);
        var path = Path.Combine(full, "journal.jsonl");
        var text = JournalFile.Read(path);
        if (text.Damaged.Count > 0)
            text = JournalRepair.SetAside(path, text, allowed: false, TimeProvider.System);
        var state = text.Entries.Aggregate(JobState.Empty, (known, entry) => known.Apply(entry));
        return state.Profile is null
            ? throw new BenchFaultException(BenchFault.BadFile, $"no job in {full}", "the folder of a job that has begun", "name another") { AtTerminal = "--job" }
            : new(full, text.Entries, state);
    }
}
