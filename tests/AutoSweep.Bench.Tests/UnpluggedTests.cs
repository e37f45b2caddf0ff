using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;
using Xunit.Abstractions;

namespace AutoSweep.Bench.Tests;

/// <summary>Plugs pulled in the middle of a sweep, on real wires: the job pauses, says what is missing, and goes on by itself.</summary>
public sealed class UnpluggedTests(ITestOutputHelper output) : IDisposable
{
    // Simulated seconds: two of the wall clock at this rate, longer than a worker takes to notice.
    private const double Rate = 10;
    private const double Gap = 20;

    // How often the journal is looked at: a reading takes several times as long.
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(10);

    private readonly TemporaryFolder _folder = new();

    private string Journal => Path.Combine(_folder.Path, "journal.jsonl");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("The meter is back.", "meter")]
    [InlineData("The fixture is back.", "fixture")]
    [InlineData("The meter and the fixture are back.", "meter", "fixture")]
    public async Task A_sweep_pauses_says_what_is_missing_and_goes_on_by_itself_without_a_reading_of_before_the_gap(string back, params string[] unplugged)
    {
        await using var bench = await ServedBench.StartAsync("small", "sweep", Rate, "--unplugging");
        using var worker = Programs.Start(Programs.Worker, ["sweep", .. bench.Flags(_folder.Path)]);
        var ending = Run.EndAsync(worker);
        await UntilAsync(state => state is { Swept.Count: 2, InHand.Readings.Count: >= 2 }, ending);

        foreach (var instrument in unplugged)
            await bench.UnplugAsync(instrument, Gap);

        var run = await ending;
        output.WriteLine(run.Output + run.Errors);
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        var entries = JournalFile.Read(Journal).Entries;
        var lost = entries.First(entry => entry.Event is InstrumentLost);
        var broken = Fold(entries.TakeWhile(entry => entry != lost)).InHand!.Output;
        Assert.Contains(((InstrumentLost)lost.Event).Instrument.ToString(), unplugged, StringComparer.OrdinalIgnoreCase);
        foreach (var part in new[] { "Lost: the ", "Paused. The ", " is gone. Look at its cable", $"{back} Output {broken} begins anew" })
            Assert.Contains(part, run.Output, StringComparison.Ordinal);
        foreach (var instrument in unplugged)
            Assert.Contains($"The {instrument} at {(instrument == "meter" ? bench.Meter : bench.Fixture)} is gone", run.Output, StringComparison.Ordinal);
        CheckJournal(entries, lost.Sequence, broken);
        var (exitCode, text) = await ServedBench.ScoreAsync("small", _folder.Path);
        Assert.True(exitCode == 0, text);
    }

    [Fact]
    public async Task A_kept_bench_waits_for_what_was_unplugged_too()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", rate: 40, "--unplugging");
        using var worker = Programs.Start(Programs.Worker, ["serve", .. bench.Flags(_folder.Path).Where(flag => flag != "--hands-free")]);
        var errors = worker.StandardError.ReadToEndAsync();
        await UntilLineAsync(worker.StandardOutput, "The bench is connected", errors);

        foreach (var instrument in new[] { "fixture", "meter" })
        {
            await bench.UnplugAsync(instrument, 40);
            await UntilLineAsync(worker.StandardOutput, $"The {instrument} at ", errors);
            await UntilLineAsync(worker.StandardOutput, $"The {instrument} is back.", errors);
        }

        worker.Kill();
        await worker.WaitForExitAsync();
    }

    // Nothing of the broken-off try among the readings behind the result; what was done before is not touched again.
    private static void CheckJournal(IReadOnlyList<JournalEntry> entries, long gap, int broken)
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

    private static List<LevelRead> Readings(IEnumerable<JournalEntry> entries, int output) =>
        [.. entries.Select(entry => entry.Event).OfType<LevelRead>().Where(read => read.Output == output)];

    private static JobState Fold(IEnumerable<JournalEntry> entries) => entries.Aggregate(JobState.Empty, (state, entry) => state.Apply(entry));

    private async Task UntilAsync(Func<JobState, bool> isSo, Task<Run> ending)
    {
        using var timer = new PeriodicTimer(Look, TimeProvider.System);
        while (!File.Exists(Journal) || !isSo(Fold(JournalFile.Read(Journal).Entries)))
        {
            if (ending.IsCompleted)
                Assert.Fail((await ending).Output + (await ending).Errors);
            await timer.WaitForNextTickAsync();
        }
    }

    private static async Task UntilLineAsync(StreamReader lines, string part, Task<string> errors)
    {
        while (await lines.ReadLineAsync() is var line)
        {
            if (line is null)
                Assert.Fail($"Ended before \"{part}\": {await errors}");
            if (line.Contains(part, StringComparison.Ordinal))
                return;
        }
    }
}
