using System.Collections.Immutable;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Page.AtBench;

/// <summary>The readings of the output at the clips, or of the one before while nothing new is clipped.</summary>
/// <remarks>A fold over the journal, for live pictures.</remarks>
/// <remarks>Immutable.</remarks>
/// <param name="Output">The output; none before the first is recognised.</param>
/// <param name="Readings">Its readings, oldest first.</param>
public sealed record LiveReadings(int? Output, ImmutableList<ShownReading> Readings)
{
    /// <summary>Nothing read.</summary>
    public static LiveReadings None { get; } = new(null, []);

    /// <summary>The readings after one more entry.</summary>
    public LiveReadings Apply(JournalEntry entry) => entry.Event switch
    {
        OutputRecognised recognised => new(recognised.Output, []),
        LevelRead read when read.Output == Output => With(entry, read.Picofarads, read.Millivolts, read.Settled),
        MagnetRead read when read.Output == Output => With(entry, null, read.Millivolts, settled: true),
        EntryWithdrawn withdrawn => this with { Readings = Readings.RemoveAll(one => one.Sequence == withdrawn.Sequence) },
        OutputAbandoned or InstrumentLost or BenchConnected => None,
        _ => this,
    };

    private LiveReadings With(JournalEntry entry, long? picofarads, double millivolts, bool settled) =>
        this with { Readings = Readings.Add(new(entry.Sequence, entry.At, picofarads, millivolts, settled)) };
}
