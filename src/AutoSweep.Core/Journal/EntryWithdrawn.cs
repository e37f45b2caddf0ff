namespace AutoSweep.Core.Journal;

/// <summary>A result was taken back: an undo. The entry stays in the journal and no longer counts.</summary>
/// <param name="Sequence">The sequence number of the entry that is taken back.</param>
public sealed record EntryWithdrawn(long Sequence) : JournalEvent;
