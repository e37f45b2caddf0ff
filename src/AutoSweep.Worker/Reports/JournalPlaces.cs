using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Reports;

/// <summary>Where in the journal a result stands, so that a printed number can be followed back to its reading.</summary>
public sealed class JournalPlaces
{
    private readonly Dictionary<JournalEvent, JournalEntry> _entries = new(ReferenceEqualityComparer.Instance);

    /// <summary>The places of a journal's entries.</summary>
    /// <param name="entries">The entries from which the state was folded: the same objects.</param>
    public JournalPlaces(IEnumerable<JournalEntry> entries)
    {
        foreach (var entry in entries)
            _entries[entry.Event] = entry;
    }

    /// <summary>The sequence number of a result; none where it is not of this journal.</summary>
    public long? Of(JournalEvent? result) => result is null ? null : _entries.GetValueOrDefault(result)?.Sequence;
}
