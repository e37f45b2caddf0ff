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

    /// <summary>Waits until the journal has come so far; the worker's end is a failure.</summary>
    public static async Task UntilAsync(string journal, Func<JobState, bool> isSo, Task<Run> ending)
    {
        using var patience = new CancellationTokenSource(Patience, TimeProvider.System);
        using var timer = new PeriodicTimer(Look, TimeProvider.System);
        while (!File.Exists(journal) || !isSo(Fold(JournalFile.Read(journal).Entries)))
        {
            if (ending.IsCompleted)
                Assert.Fail((await ending).Output + (await ending).Errors);
            await timer.WaitForNextTickAsync(patience.Token);
        }
    }

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
        Assert.Equal(2, done.Count);
        Assert.All(done, number => Assert.Empty(Readings(after, number)));
        Assert.Equal(6, entries.Count(entry => entry.Event is OutputSwept));
    }

    public static JobState Fold(IEnumerable<JournalEntry> entries) => entries.Aggregate(JobState.Empty, (state, entry) => state.Apply(entry));

    private static List<LevelRead> Readings(IEnumerable<JournalEntry> entries, int output) =>
        [.. entries.Select(entry => entry.Event).OfType<LevelRead>().Where(read => read.Output == output)];
}
