using System.Collections.Immutable;

namespace AutoSweep.Core.Journal;

/// <summary>What a job knows of the work at its magnets: the fold over the events that are about them.</summary>
/// <remarks>Immutable.</remarks>
public sealed record LevellingRecord
{
    /// <summary>Nothing yet.</summary>
    public static LevellingRecord Empty { get; } = new();

    /// <summary>The latest outcome of each output, by number.</summary>
    public ImmutableSortedDictionary<int, OutputLevelled> Levelled { get; private init; } = ImmutableSortedDictionary<int, OutputLevelled>.Empty;

    /// <summary>The hazards that were acknowledged, oldest first.</summary>
    public ImmutableList<HazardAcknowledged> Acknowledged { get; private init; } = [];

    private ImmutableSortedDictionary<long, JournalEvent> Entries { get; init; } = ImmutableSortedDictionary<long, JournalEvent>.Empty;

    /// <summary>The readings of an output at its magnet that have not been taken back, oldest first.</summary>
    public IReadOnlyList<MagnetRead> ReadingsOf(int output) => [.. Entries.Values.OfType<MagnetRead>().Where(read => read.Output == output)];

    /// <summary>The latest reading or outcome that has not been taken back; none before the first.</summary>
    public (long Sequence, int Output)? Last => Entries.IsEmpty ? null : Of(Entries.Last());

    /// <summary>Whether an entry is one that can be taken back here.</summary>
    public bool Holds(long sequence) => Entries.ContainsKey(sequence);

    /// <summary>The record after one more entry.</summary>
    public LevellingRecord Apply(JournalEntry entry) => entry.Event switch
    {
        HazardAcknowledged hazard => this with { Acknowledged = Acknowledged.Add(hazard) },
        MagnetRead => this with { Entries = Entries.SetItem(entry.Sequence, entry.Event) },
        OutputLevelled levelled => this with
        {
            Entries = Entries.SetItem(entry.Sequence, entry.Event),
            Levelled = Levelled.SetItem(levelled.Output, levelled),
        },
        EntryWithdrawn withdrawn => Withdraw(withdrawn.Sequence),
        _ => this,
    };

    // An output whose last reading is taken back is not done any more, whatever was said after that reading.
    private LevellingRecord Withdraw(long sequence)
    {
        if (!Entries.TryGetValue(sequence, out var taken))
            return this;
        var (left, output) = (Entries.Remove(sequence), Of(new(sequence, taken)).Output);
        var earlier = taken is MagnetRead ? null : left.Values.OfType<OutputLevelled>().LastOrDefault(one => one.Output == output);
        return this with { Entries = left, Levelled = earlier is null ? Levelled.Remove(output) : Levelled.SetItem(output, earlier) };
    }

    private static (long Sequence, int Output) Of(KeyValuePair<long, JournalEvent> entry) =>
        (entry.Key, entry.Value is MagnetRead read ? read.Output : ((OutputLevelled)entry.Value).Output);
}
