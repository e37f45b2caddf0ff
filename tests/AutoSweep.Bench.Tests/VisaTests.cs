using System.Text.RegularExpressions;
using AutoSweep.Bench.Tests.Support;
using AutoSweep.Instruments.Tests.Support;

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

    private static Task<Run> WorkerAsync(ServedBench bench, IEnumerable<string> arguments)
    {
        var port = Port().Match(bench.Meter).Value;
        return Run.EndAsync(Programs.StartInShell(
            $"export AUTOSWEEP_VISA='{VisaStandIn.FileName}' VISA_STANDIN='{Meter}={port}'; exec \"$@\"", Programs.Worker, arguments));
    }

    [GeneratedRegex("(?<=::)[0-9]+(?=::SOCKET)")]
    private static partial Regex Port();
}
