using System.Globalization;
using System.Text.RegularExpressions;
using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Instruments.Links;
using AutoSweep.Worker.Job;
using Xunit.Abstractions;

namespace AutoSweep.Bench.Tests;

/// <summary>SIGKILL at random instants of a sweep, fifty times: nothing acknowledged is lost, nothing is measured twice, the relays open.</summary>
public sealed partial class KillTests(ITestOutputHelper output)
{
    private const int Kills = 50;
    private const int Benches = 2;

    // The fixture's own watchdog, in wall seconds of an accelerated bench: a second, and what a timer may be too early.
    private static readonly TimeSpan Watchdog = TimeSpan.FromSeconds(1.1);

    [Fact]
    public async Task A_sweep_killed_at_fifty_random_instants_ends_with_every_output_once()
    {
        var kills = await Task.WhenAll(Enumerable.Range(0, Benches).Select(index => KillAsync(new Random(20261124 + index), Kills / Benches)));

        Assert.Equal(Kills, kills.Sum());
    }

    private async Task<int> KillAsync(Random random, int wanted)
    {
        var kills = 0;
        while (kills < wanted)
        {
            using var folder = new TemporaryFolder();
            await using var bench = await ServedBench.StartAsync("small", "sweep", rate: 20);
            kills += await KillOneJobAsync(bench, folder.Path, random, wanted - kills);
        }

        return kills;
    }

    private async Task<int> KillOneJobAsync(ServedBench bench, string job, Random random, int wanted)
    {
        var kills = 0;
        for (var known = ""; ; kills++)
        {
            var began = File.Exists(Path.Combine(job, "journal.jsonl")) && JournalFile.Read(Path.Combine(job, "journal.jsonl")).Entries.Count > 0;
            using var worker = Programs.Start(Programs.Worker, ["sweep", .. bench.Flags(job), .. began ? ["--resume"] : Array.Empty<string>()]);
            var printed = worker.StandardOutput.ReadToEndAsync();
            var errors = worker.StandardError.ReadToEndAsync();
            var patience = kills < wanted ? TimeSpan.FromMilliseconds(random.Next(100, 2500)) : Timeout.InfiniteTimeSpan;
            var ended = await Task.WhenAny(worker.WaitForExitAsync(), Task.Delay(patience, TimeProvider.System)) is { } first && worker.HasExited;
            worker.Kill();
            await worker.WaitForExitAsync();
            known = CheckJournal(job, known, await printed);
            if (ended)
            {
                Assert.True(worker.ExitCode == 0, $"exit code {worker.ExitCode}: {await errors}");
                await CheckEndAsync(job);
                return kills;
            }

            await CheckRelaysOpenAsync(bench);
        }
    }

    // What stood in the journal before stands there still, and every result that was told on the screen is in it.
    private static string CheckJournal(string job, string known, string printed)
    {
        var path = Path.Combine(job, "journal.jsonl");
        if (!File.Exists(path))
            return known;
        var text = JournalFile.Read(path);
        var now = File.ReadAllText(path)[..(int)text.SoundLength];
        Assert.Empty(text.Damaged);
        Assert.StartsWith(known, now, StringComparison.Ordinal);
        var swept = text.Entries.Select(entry => entry.Event).OfType<OutputSwept>().Select(result => result.Output).ToList();
        Assert.Equal(swept.Distinct(), swept);
        foreach (Match told in ResultLine().Matches(printed))
            Assert.Contains(int.Parse(told.Groups[1].Value, CultureInfo.InvariantCulture), swept);
        return now;
    }

    private static async Task CheckRelaysOpenAsync(ServedBench bench)
    {
        var link = await OpenAsync(ResourceName.Parse(bench.Fixture));
        await using (link)
        {
            // What the killed program had asked for may still come first; the identity tells where that ends, and only then may the watchdog's time begin: a
            // bench that was held up would hear the last order, and the question for the relays, in one breath.
            await AskAsync(link, "\n*IDN?\n", IdentityLine());
            await Task.Delay(Watchdog, TimeProvider.System);
            Assert.Equal("(@)", (await AskAsync(link, "ROUT:CLOS:STAT?\n", StateLine())).Groups[1].Value);
        }
    }

    // The simulated line takes the killed program's exclusive use back again and again; until then it is in use.
    private static async Task<ILink> OpenAsync(ResourceName fixture)
    {
        using var limit = new CancellationTokenSource(Run.Longest, TimeProvider.System);
        using var timer = new PeriodicTimer(TimeSpan.FromMilliseconds(50), TimeProvider.System);
        while (true)
        {
            try
            {
                return await new LinkOpener(TimeProvider.System).OpenAsync(fixture, new(new()), limit.Token);
            }
            catch (BenchFaultException fault) when (fault.Kind == BenchFault.NotReachable)
            {
                await timer.WaitForNextTickAsync(limit.Token);
            }
        }
    }

    private static async Task<Match> AskAsync(ILink link, string query, Regex answer)
    {
        await link.WriteAsync(System.Text.Encoding.ASCII.GetBytes(query), CancellationToken.None);
        var buffer = new byte[256];
        var reply = "";
        while (!answer.IsMatch(reply))
            reply += System.Text.Encoding.ASCII.GetString(buffer, 0, await link.ReadAsync(buffer, CancellationToken.None));
        return answer.Match(reply);
    }

    private async Task CheckEndAsync(string job)
    {
        var (exitCode, text) = await ServedBench.ScoreAsync("small", job);
        output.WriteLine(text);
        Assert.True(exitCode == 0, text);
        var state = JournalFile.Read(Path.Combine(job, "journal.jsonl")).Entries.Aggregate(JobState.Empty, (known, entry) => known.Apply(entry));
        Assert.Equal([9, 10, 11, 12, 13, 14], state.Swept.Keys);
        // Told once in the CSV, and its readings are those of one unbroken try.
        Assert.Equal(7, File.ReadAllLines(Path.Combine(job, "sweeps.csv")).Length);
        Assert.All(state.Swept.Values, swept => Assert.Equal(swept.Readings, state.SweepReadings[swept.Output].Count));
    }

    [GeneratedRegex(@"output +(\d+) .* peak .* readings")]
    private static partial Regex ResultLine();

    [GeneratedRegex(@"(\(@[^)]*\))\r?\n$")]
    private static partial Regex StateLine();

    [GeneratedRegex(@"SIM-F-small[^\n]*\n$")]
    private static partial Regex IdentityLine();
}
