using System.Diagnostics;
using System.Text.RegularExpressions;
using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Journal;
using AutoSweep.Instruments.Tests.Support;
using AutoSweep.Worker.Job;

namespace AutoSweep.Bench.Tests;

/// <summary>The worker with a VISA library: the stand-in, which hands messages on to the simulated meter. The library is named by the
/// environment, as on a bench where it lies in an unusual place.</summary>
public sealed partial class VisaTests : IDisposable
{
    private const string Meter = "GPIB0::22::INSTR";

    private readonly TemporaryFolder _folder = new();

    [CompiledFact]
    public async Task A_sweep_through_VISA_ends_by_itself_near_every_true_peak()
    {
        await using var bench = await ServedBench.StartAsync("small", "sweep", rate: 40);
        var flags = bench.Flags(_folder.Path).Select(flag => flag == bench.Meter ? Meter : flag);

        var run = await WorkerAsync(bench, ["sweep", .. flags]);

        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        var (exitCode, text) = await ServedBench.ScoreAsync("small", _folder.Path);
        Assert.True(exitCode == 0, text + run.Output);
    }

    // The stand-in gives what a VISA library does: VI_ERROR_CONN_LOST from the call that meets the gap, VI_ERROR_RSRC_NFOUND from viOpen as long as it
    // lasts (VPP-4.3, tables of completion and error codes).
    [CompiledFact]
    public async Task A_sweep_through_VISA_waits_for_a_meter_whose_connection_is_lost_and_uses_no_reading_of_before()
    {
        await using var bench = await ServedBench.StartAsync("small", "sweep", rate: 20, "--unplugging");
        var flags = bench.Flags(_folder.Path).Select(flag => flag == bench.Meter ? Meter : flag);
        using var worker = new HeardRun(Start(bench, ["sweep", .. flags]));
        await GapJournal.HoldAsync(_folder.File("journal.jsonl"), GapJournal.IsInTheMiddle, worker);

        await bench.UnplugAsync("meter");
        await worker.ThawAsync();
        await worker.SaysAsync($"The meter at {Meter} is gone");
        await bench.PlugInAsync("meter");

        var run = await worker.EndAsync();
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        var entries = JournalFile.Read(_folder.File("journal.jsonl")).Entries;
        var lost = entries.First(entry => entry.Event is InstrumentLost);
        Assert.Contains("VI_ERROR_CONN_LOST", ((InstrumentLost)lost.Event).Found, StringComparison.Ordinal);
        Assert.Contains($"The meter at {Meter} is gone", run.Output, StringComparison.Ordinal);
        Assert.Contains("The meter is back.", run.Output, StringComparison.Ordinal);
        GapJournal.Check(entries, lost.Sequence, GapJournal.Fold(entries.TakeWhile(entry => entry != lost)).InHand!.Output);
        var (exitCode, text) = await ServedBench.ScoreAsync("small", _folder.Path);
        Assert.True(exitCode == 0, text);
    }

    [CompiledFact]
    public async Task The_instruments_that_the_library_knows_are_listed_and_asked_with_the_driver_that_fits()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", rate: 40);

        var listed = await WorkerAsync(bench, ["instruments"]);
        var asked = await WorkerAsync(bench, ["instruments", "--ask", Meter]);

        Assert.Equal(0, listed.ExitCode);
        Assert.Contains($"{Meter}\n    through VISA\n", listed.Output, StringComparison.Ordinal);
        Assert.Equal(0, asked.ExitCode);
        Assert.Matches(@"^GPIB0::22::INSTR\n    answers .*,.*\n    driver: .*scpi-dmm", asked.Output);
    }

    public void Dispose() => _folder.Dispose();

    private static Task<Run> WorkerAsync(ServedBench bench, IEnumerable<string> arguments) => Run.EndAsync(Start(bench, arguments));

    private static Process Start(ServedBench bench, IEnumerable<string> arguments)
    {
        var port = Port().Match(bench.Meter).Value;
        return Programs.StartInShell(
            $"export AUTOSWEEP_VISA='{VisaStandIn.FileName}' VISA_STANDIN='{Meter}={port}'; exec \"$@\"", Programs.Worker, arguments);
    }

    [GeneratedRegex("(?<=::)[0-9]+(?=::SOCKET)")]
    private static partial Regex Port();
}
