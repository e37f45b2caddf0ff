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
        await GapJournal.UntilAsync(Journal, state => state is { Swept.Count: 2, InHand.Readings.Count: >= 2 }, ending);

        foreach (var instrument in unplugged)
            await bench.UnplugAsync(instrument, Gap);

        var run = await ending;
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
        var ending = Run.EndAsync(Programs.Start(Programs.Worker, ["survey", .. bench.Flags(_folder.Path)]));
        await GapJournal.UntilAsync(Journal, state => state.Surveyed.Count == 3, ending);

        await bench.UnplugAsync("meter", Gap);

        var run = await ending;
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
        using var worker = Programs.Start(Programs.Worker, ["keep", .. bench.Flags(_folder.Path).Where(flag => flag != "--hands-free")]);
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
