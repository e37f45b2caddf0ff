using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Stock;

/// <summary>Reads the ledger's file, and mends it.</summary>
public static class LedgerText
{
    /// <summary>Sets damaged lines aside.</summary>
    public static LineRepair<StockEntry> Repair { get; } = new(
        (entry, sequence, renumbered) => new(sequence, entry.At, Renumber(entry.Event, renumbered)),
        (sequence, at, copy, lines) => new(sequence, at, new LedgerLinesSetAside(copy, lines)));

    /// <summary>Reads the ledger, or what was added to it.</summary>
    /// <param name="path">The file; need not exist.</param>
    /// <param name="offset">Where to begin, in bytes: the start of a line.</param>
    /// <param name="after">The number of the entry before.</param>
    /// <exception cref="BenchFaultException">The file is there and cannot be read.</exception>
    public static ChecksummedText<StockEntry> ReadFrom(string path, long offset, long after)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            if (file.Length < offset)
                return new([], [new(1, "the file is shorter than it was")], false, 0);
            file.Position = offset;
            using var bytes = new MemoryStream();
            file.CopyTo(bytes);
            return ChecksummedLines.Read<StockEntry>(bytes.GetBuffer().AsSpan(0, (int)bytes.Length), after);
        }
        catch (Exception missing) when (missing is FileNotFoundException or DirectoryNotFoundException)
        {
            return new([], [], false, 0);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BenchFaultException(BenchFault.BadFile, $"the stock ledger {path} cannot be read ({fault.Message})",
                "a file that this user may read",
                "mend the permissions, or name another data folder", fault) { AtTerminal = "--stock" };
        }
    }

    /// <summary>The fault of a ledger with damaged lines.</summary>
    public static BenchFaultException Damaged(string path, ChecksummedText<StockEntry> text) => new(
        BenchFault.JournalDamaged, Repair.Describe(path, text), $"a whole ledger ({text.Entries.Count} other lines are sound)",
        "put a backup copy of the ledger in its place, or run autosweep stock repair: the file is kept as it is under another name, "
        + "the sound lines go on to count; look through the parts of the damaged lines afterwards");

    // An undo names the entry that it takes back; one that named a damaged line has nothing left to take back.
    private static StockEvent Renumber(StockEvent what, IReadOnlyDictionary<long, long> renumbered) =>
        what is LedgerEntryWithdrawn withdrawn ? new LedgerEntryWithdrawn(renumbered.GetValueOrDefault(withdrawn.Sequence)) : what;
}
