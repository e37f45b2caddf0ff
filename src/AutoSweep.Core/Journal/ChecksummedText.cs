namespace AutoSweep.Core.Journal;

/// <summary>A file of checksummed lines, or its tail, as it was read: the entries that can be trusted, and the lines that cannot.</summary>
/// <param name="Entries">The trusted entries in order.</param>
/// <param name="Damaged">The lines in the middle that cannot be trusted.</param>
/// <param name="TornTail">Whether the last line was cut off while it was written. Nobody was told of it, so nothing is lost with
/// it.</param>
/// <param name="SoundLength">Length in bytes up to the end of the last whole line.</param>
public record ChecksummedText<TEntry>(IReadOnlyList<TEntry> Entries, IReadOnlyList<DamagedLine> Damaged, bool TornTail, long SoundLength)
    where TEntry : class, INumberedEntry;
