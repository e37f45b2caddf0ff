using System.Text.Json.Serialization;

namespace AutoSweep.Core.Journal;

/// <summary>One line of the journal.</summary>
/// <param name="Sequence">Its place, from 1, without gaps.</param>
/// <param name="At">When it was written.</param>
/// <param name="Event">What happened.</param>
public sealed record JournalEntry(long Sequence, DateTimeOffset At, JournalEvent Event) : INumberedEntry
{
    /// <inheritdoc/>
    [JsonIgnore]
    public bool IsWhole => Event is not null;
}
