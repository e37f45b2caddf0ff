using AutoSweep.Core;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Job;

/// <summary>The open job: its journal and the state folded from it. The only way to change either is <see cref="Append"/>.</summary>
public sealed class JobRecord : IDisposable
{
    private readonly JobFolder? _folder;
    private readonly JournalFile? _journal;
    private readonly TimeProvider _clock;
    private readonly Lock _gate = new();

    private JobRecord(JobFolder? folder, JournalFile? journal, JobState state, TimeProvider clock) =>
        (_folder, _journal, State, _clock) = (folder, journal, state, clock);

    /// <summary>Raised after each entry has reached the disk and been folded in.</summary>
    public event Action<JournalEntry>? Appended;

    /// <summary>What is known of the job now.</summary>
    public JobState State { get; private set; }

    /// <summary>Where the job's files are.</summary>
    /// <exception cref="InvalidOperationException">A rehearsal has none.</exception>
    public JobFolder Folder => _folder ?? throw new InvalidOperationException("A rehearsal has no folder.");

    /// <summary>The generator on the bench.</summary>
    public GeneratorProfile Profile => State.Profile ?? throw new InvalidOperationException("The job has not been opened.");

    /// <summary>Begins a new job in a folder that holds none.</summary>
    /// <param name="folder">The folder, locked; owned by the record from now on.</param>
    /// <param name="profile">The generator.</param>
    /// <param name="software">Name and version of this program.</param>
    /// <param name="clock">The wall clock.</param>
    /// <exception cref="BenchFaultException">The folder holds a job already.</exception>
    public static JobRecord Begin(JobFolder folder, GeneratorProfile profile, string software, TimeProvider clock)
    {
        if (JournalFile.Read(folder.Journal).Entries.Count > 0)
            throw new BenchFaultException(BenchFault.JobInUse, $"{folder.Path} holds a job already", "an empty or new folder for a new job",
                "go on with that job, or name another folder") { AtTerminal = "--resume, --job" };
        var record = new JobRecord(folder, JournalFile.Open(folder.Journal, 0), JobState.Empty, clock);
        record.Append(new JobOpened(software, profile));
        return record;
    }

    /// <summary>Begins a job that nobody keeps, for rehearsals by the hundred: all is as in a real one, but no disk has it.</summary>
    /// <param name="profile">The generator.</param>
    /// <param name="software">Name and version of this program.</param>
    /// <param name="clock">The clock of its entries.</param>
    public static JobRecord Rehearse(GeneratorProfile profile, string software, TimeProvider clock)
    {
        var record = new JobRecord(null, null, JobState.Empty, clock);
        record.Append(new JobOpened(software, profile));
        return record;
    }

    /// <summary>Goes on with the job in a folder.</summary>
    /// <param name="folder">The folder, locked; owned by the record from now on.</param>
    /// <param name="setAsideDamage">Whether lines in the middle that cannot be trusted may be set aside.</param>
    /// <param name="clock">The wall clock.</param>
    /// <exception cref="BenchFaultException">There is no job, or its journal is damaged in the middle.</exception>
    public static JobRecord Resume(JobFolder folder, bool setAsideDamage, TimeProvider clock)
    {
        var text = JournalFile.Read(folder.Journal);
        if (text.Damaged.Count > 0)
            text = JournalRepair.SetAside(folder.Journal, text, setAsideDamage, clock);
        var state = text.Entries.Aggregate(JobState.Empty, (known, entry) => known.Apply(entry));
        if (state.Profile is null)
            throw new BenchFaultException(BenchFault.BadFile, $"no job in {folder.Path} ({text.Entries.Count} journal entries)",
                "a journal.jsonl that begins with the opening of a job", "begin a new job there") { AtTerminal = "without --resume" };
        return new(folder, JournalFile.Open(folder.Journal, text.SoundLength), state, clock);
    }

    /// <summary>Writes an event to disk, then folds it into the state, then tells the listeners.</summary>
    /// <exception cref="BenchFaultException">The journal cannot be written; the state is unchanged.</exception>
    public JournalEntry Append(JournalEvent what)
    {
        JournalEntry entry;
        lock (_gate)
        {
            entry = new(State.Sequence + 1, _clock.GetUtcNow(), what);
            _journal?.Append(entry);
            State = State.Apply(entry);
        }

        Appended?.Invoke(entry);
        return entry;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _journal?.Dispose();
        _folder?.Dispose();
    }
}
