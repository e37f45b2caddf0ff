using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>The journal of a sweep of the small bench in which a plug was pulled.</summary>
internal static class GapJournal
{
    // How often the journal is looked at: a reading takes several times as long.
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(10);

    // A sweep of the small bench takes a tenth of it.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    /// <summary>Waits until the journal has come so far, and holds the worker there: it stands still until it is let go on. Its end is a failure.</summary>
    /// <remarks>What was looked for may be over before it was seen, and again before the worker stands: then the next such moment is waited for.</remarks>
    public static async Task HoldAsync(string journal, Func<JobState, bool> isSo, HeardRun worker)
    {
        using var patience = new CancellationTokenSource(Patience, TimeProvider.System);
        using var timer = new PeriodicTimer(Look, TimeProvider.System);
        while (true)
        {
            if (HasCome(journal, isSo))
            {
                await worker.FreezeAsync();
                if (HasCome(journal, isSo))
                    return;
                await worker.ThawAsync();
            }

            if (worker.HasEnded)
                await worker.SaysAsync("what was waited for in its journal");
            await timer.WaitForNextTickAsync(patience.Token);
        }
    }

    /// <summary>In the middle of an output, with two behind it and more to come.</summary>
    public static bool IsInTheMiddle(JobState state) => state is { Swept.Count: >= 2 and < 6, InHand.Readings.Count: 2 or 3 };

    private static bool HasCome(string journal, Func<JobState, bool> isSo) => File.Exists(journal) && isSo(Fold(JournalFile.Read(journal).Entries));

    /// <summary>Nothing of the broken-off try among the readings behind the result; what was done before is not touched again.</summary>
    public static void Check(IReadOnlyList<JournalEntry> entries, long gap, int broken)
    {
        var (before, after) = (entries.Where(entry => entry.Sequence < gap).ToList(), entries.Where(entry => entry.Sequence > gap).ToList());
        var state = Fold(entries);
        var done = Fold(before).Swept.Keys.ToList();
        Assert.Equal([9, 10, 11, 12, 13, 14], state.Swept.Keys);
        Assert.True(Readings(before, broken).Count >= 2);
        Assert.Empty(state.SweepReadings[broken].Intersect(Readings(before, broken)));
        Assert.Equal(state.Swept[broken].Readings, state.SweepReadings[broken].Count);
        Assert.Contains(after, entry => entry.Event is BenchConnected);
        Assert.InRange(done.Count, 2, 5);
        Assert.All(done, number => Assert.Empty(Readings(after, number)));
        Assert.Equal(6, entries.Count(entry => entry.Event is OutputSwept));
    }

    public static JobState Fold(IEnumerable<JournalEntry> entries) => entries.Aggregate(JobState.Empty, (state, entry) => state.Apply(entry));

    private static List<LevelRead> Readings(IEnumerable<JournalEntry> entries, int output) =>
        [.. entries.Select(entry => entry.Event).OfType<LevelRead>().Where(read => read.Output == output)];
}
