using System.Diagnostics;
using System.Globalization;
using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;
using Xunit.Abstractions;

namespace AutoSweep.Bench.Tests;

/// <summary>Eight programs at one ledger, killed at random instants: no part is ever reserved twice, nothing acknowledged is
/// lost.</summary>
public sealed class StockLedgerKillTests(ITestOutputHelper output)
{
    private const int Benches = 8;
    private const int Kills = 40;
    private const int Parts = 30;
    private const int LeastAcknowledged = 200;

    // However slowly programs start, they go on until the test has shown something.
    private readonly TaskCompletionSource _enough = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Dictionary<string, int> _acknowledged = [];
    private bool _isRefused;

    [Fact]
    public async Task Eight_programs_killed_at_random_never_reserve_a_part_twice_and_lose_nothing_acknowledged()
    {
        using var folder = new TemporaryFolder();
        var ledger = new StockLedger(Path.Combine(folder.Path, "stock.jsonl"), TimeProvider.System);
        var now = TimeProvider.System.GetUtcNow();
        await ledger.AppendAsync(new PartsTakenIn([.. Enumerable.Range(1, Parts)
            .Select(number => new Part { Id = $"P{number:00}", Measured = new(100_000, 0, now) })]), CancellationToken.None);

        var printed = await KillAsync(ledger.Path, new Random(20261125));

        var acknowledged = printed.SelectMany(one => one.Lines.Select(line => (one.Job, Words: line.Split(' '))))
            .Where(one => one.Words.Length == 3).ToList();
        var entries = new StockLedger(ledger.Path, TimeProvider.System).Read().Entries;
        var refused = printed.Sum(one => one.Lines.Count(line => line == "refused"));
        output.WriteLine($"{entries.Count} entries, {acknowledged.Count} acknowledged, {refused} refused, {Kills} kills");
        AssertNoPartIsHeldTwice(entries);
        Assert.All(acknowledged, one => Assert.Equal($"{one.Job} {string.Join(' ', one.Words)}",
            Told(entries[int.Parse(one.Words[1], CultureInfo.InvariantCulture) - 1])));
        // Otherwise the test has shown nothing.
        Assert.InRange(acknowledged.Count, LeastAcknowledged, int.MaxValue);
        Assert.InRange(acknowledged.Select(one => one.Job).Distinct().Count(), Benches, Benches);
        Assert.True(refused > 0);
    }

    private async Task<List<(string Job, string[] Lines)>> KillAsync(string ledger, Random random)
    {
        var running = Enumerable.Range(0, Benches).Select(bench => Start(ledger, bench, random)).ToList();
        List<(string Job, string[] Lines)> printed = [];
        for (var kill = 0; kill < Kills; kill++)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(random.Next(50, 400)), TimeProvider.System);
            var bench = random.Next(Benches);
            printed.Add(await EndAsync(running[bench]));
            running[bench] = Start(ledger, bench, random);
        }

        await _enough.Task.WaitAsync(Run.Longest, TimeProvider.System);
        foreach (var one in running)
        {
            // Each has its say before the end, however slowly it started.
            await one.FirstLine;
            printed.Add(await EndAsync(one));
        }

        return printed;
    }

    private Reserving Start(string ledger, int bench, Random random)
    {
        var job = $"bench {bench}";
        var process = Programs.Start(Programs.Reserving, ledger, job, random.Next().ToString(CultureInfo.InvariantCulture));
        var errors = process.StandardError.ReadToEndAsync();
        var first = new TaskCompletionSource();
        return new(job, process, errors, first.Task, ReadAsync(job, process, first));
    }

    private async Task<List<string>> ReadAsync(string job, Process process, TaskCompletionSource first)
    {
        List<string> lines = [];
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            lines.Add(line);
            first.TrySetResult();
            Count(job, line);
        }

        first.TrySetResult();
        return lines;
    }

    // What the test holds in the end: so many acknowledged, some for each bench, and a refusal.
    private void Count(string job, string line)
    {
        lock (_acknowledged)
        {
            _isRefused |= line == "refused";
            if (IsAcknowledged(line))
                _acknowledged[job] = _acknowledged.GetValueOrDefault(job) + 1;
            if (_isRefused && _acknowledged.Count == Benches && _acknowledged.Values.Sum() >= LeastAcknowledged)
                _enough.TrySetResult();
        }
    }

    private static bool IsAcknowledged(string line) => line.Split(' ').Length == 3;

    // The last line may be cut off by the kill; a whole one was acknowledged.
    private static async Task<(string Job, string[] Lines)> EndAsync(Reserving one)
    {
        using (one.Process)
        {
            Assert.False(one.Process.HasExited, "it ended by itself");
            one.Process.Kill();
            await one.Process.WaitForExitAsync();
            Assert.Equal("", await one.Errors);
            return (one.Job, [.. await one.Lines]);
        }
    }

    // By the bare events, not by the product's own rules.
    private static void AssertNoPartIsHeldTwice(IEnumerable<StockEntry> entries)
    {
        Dictionary<string, string> holders = [];
        foreach (var entry in entries)
        {
            if (entry.Event is PartsReserved reserved)
                Assert.True(holders.TryAdd(reserved.Reservations[0].Part, reserved.Job)
                    || holders[reserved.Reservations[0].Part] == reserved.Job, $"entry {entry.Sequence}");
            if (entry.Event is PartsReleased released)
                Assert.True(holders.Remove(released.Parts[0], out var holder) && holder == released.Job, $"entry {entry.Sequence}");
        }
    }

    private static string Told(StockEntry entry) => entry.Event switch
    {
        PartsReserved reserved => FormattableString.Invariant($"{reserved.Job} reserved {entry.Sequence} {reserved.Reservations[0].Part}"),
        PartsReleased released => FormattableString.Invariant($"{released.Job} released {entry.Sequence} {released.Parts[0]}"),
        _ => "",
    };

    private sealed record Reserving(string Job, Process Process, Task<string> Errors, Task FirstLine, Task<List<string>> Lines);
}
