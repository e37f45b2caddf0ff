using AutoSweep.Core;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Job;

/// <summary>Sets damaged lines of a journal aside, when the person at the bench has said so.</summary>
public static class JournalRepair
{
    private static readonly LineRepair<JournalEntry> Repair = new(
        (entry, sequence, renumbered) => new(sequence, entry.At, Renumber(entry.Event, renumbered)),
        (sequence, at, copy, lines) => new(sequence, at, new LinesSetAside(copy, lines)));

    /// <summary>Keeps the journal as it was under another name and puts one with only the trusted lines in its place.</summary>
    /// <returns>The journal as it is now.</returns>
    /// <exception cref="BenchFaultException">Not <paramref name="allowed"/>: names each damaged line and how to go on.</exception>
    public static JournalText SetAside(string path, JournalText damaged, bool allowed, TimeProvider clock)
    {
        if (!allowed)
            throw Refusal(path, damaged);
        Repair.SetAside(path, damaged, clock);
        return JournalFile.Read(path);
    }

    // An undo names the entry that it takes back; one that named a damaged line has nothing left to take back.
    private static JournalEvent Renumber(JournalEvent what, IReadOnlyDictionary<long, long> renumbered) =>
        what is EntryWithdrawn withdrawn ? new EntryWithdrawn(renumbered.GetValueOrDefault(withdrawn.Sequence)) : what;

    private static BenchFaultException Refusal(string path, JournalText damaged) => new(
        BenchFault.JournalDamaged,
        Repair.Describe(path, damaged),
        $"a whole journal ({damaged.Entries.Count} other lines are sound)",
        "put a backup copy of the journal in its place, or go on and set the damage aside: the file is kept as it is under another name, "
        + "the sound lines go on to count, and an output whose result stood on a damaged line is measured again") { AtTerminal = "--set-aside-damage" };
}
