namespace AutoSweep.Core.Journal;

/// <summary>Lines of the journal could not be trusted and were set aside, at the wish of the person at the bench.</summary>
/// <param name="Copy">The file that keeps the journal as it was.</param>
/// <param name="Lines">The line numbers, from 1, in that file.</param>
public sealed record LinesSetAside(string Copy, IReadOnlyList<int> Lines) : JournalEvent;
