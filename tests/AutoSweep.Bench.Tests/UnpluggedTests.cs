using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;
using Xunit.Abstractions;

namespace AutoSweep.Bench.Tests;

/// <summary>Plugs pulled in the middle of a sweep, on real wires: the job pauses, says what is missing, and goes on by itself.</summary>
public sealed class UnpluggedTests(ITestOutputHelper output) : IDisposable
{
    private const double Rate = 20;

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
        using var worker = HeardRun.Worker(["sweep", .. bench.Flags(_folder.Path)]);
        await GapJournal.HoldAsync(Journal, GapJournal.IsInTheMiddle, worker);

        foreach (var instrument in unplugged)
            await bench.UnplugAsync(instrument);
        await worker.ThawAsync();
        foreach (var instrument in unplugged)
            await worker.SaysAsync($"The {instrument} at {(instrument == "meter" ? bench.Meter : bench.Fixture)} is gone");
        foreach (var instrument in unplugged)
            await bench.PlugInAsync(instrument);

        var run = await worker.EndAsync();
        output.WriteLine(run.Output + run.Errors);
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        var entries = JournalFile.Read(Journal).Entries;
        var lost = entries.First(entry => entry.Event is InstrumentLost);
        var broken = GapJournal.Fold(entries.TakeWhile(entry => entry != lost)).InHand!.Output;
        Assert.Contains(((InstrumentLost)lost.Event).Instrument.ToString(), unplugged, StringComparer.OrdinalIgnoreCase);
        foreach (var part in new[] { "Lost: the ", "Paused. The ", " is gone. Look at its cable", $"{back} Output {broken} begins anew" })
            Assert.Contains(part, run.Output, StringComparison.Ordinal);
        foreach (var instrument in unplugged)
            Assert.Contains($"The {instrument} at {(instrument == "meter" ? bench.Meter : bench.Fixture)} is gone", run.Output, StringComparison.Ordinal);
        GapJournal.Check(entries, lost.Sequence, broken);
        var (exitCode, text) = await ServedBench.ScoreAsync("small", _folder.Path);
        Assert.True(exitCode == 0, text);
    }

    [Fact]
    public async Task A_survey_pauses_and_goes_on_with_the_outputs_that_are_missing()
    {
        await using var bench = await ServedBench.StartAsync("small", "survey", Rate, "--unplugging");
        using var worker = HeardRun.Worker(["survey", .. bench.Flags(_folder.Path)]);
        await GapJournal.HoldAsync(Journal, state => state.Surveyed.Count is >= 3 and < 13, worker);

        await bench.UnplugAsync("meter");
        await worker.ThawAsync();
        await worker.SaysAsync(" is gone");
        await bench.PlugInAsync("meter");

        var run = await worker.EndAsync();
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        Assert.Contains("The meter is back.", run.Output, StringComparison.Ordinal);
        var events = JournalFile.Read(Journal).Entries.Select(entry => entry.Event).ToList();
        var lost = events.FindIndex(one => one is InstrumentLost);
        Assert.Equal(Enumerable.Range(1, 14), events.OfType<OutputSurveyed>().Select(one => one.Output).Order());
        Assert.InRange(events.Take(lost).OfType<OutputSurveyed>().Count(), 3, 13);
        // An output with a tone is never written down as silent because the meter was away.
        Assert.All(events.OfType<OutputSurveyed>(), one => Assert.NotNull(one.ToneHertz));
    }

    [Fact]
    public async Task A_kept_bench_waits_for_what_was_unplugged_too()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", rate: 40, "--unplugging");
        using var worker = HeardRun.Worker(["keep", .. bench.Flags(_folder.Path).Where(flag => flag != "--hands-free")]);
        await worker.SaysAsync("The bench is connected");

        foreach (var instrument in new[] { "fixture", "meter" })
        {
            await bench.UnplugAsync(instrument);
            await worker.SaysAsync($"The {instrument} at ");
            await bench.PlugInAsync(instrument);
            await worker.SaysAsync($"The {instrument} is back.");
        }
    }
}
