using System.Globalization;
using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;
using Xunit.Abstractions;

namespace AutoSweep.Bench.Tests;

/// <summary>Plugs pulled outside a job's stages, on real wires: part intake and the calibration of a fixture pause, and go on by themselves.</summary>
public sealed class UnpluggedElsewhereTests(ITestOutputHelper output) : IDisposable
{
    private const double Rate = 20;

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    // Pulled as a part comes on, so in the middle of its readings; and as a part has been beeped for, so with one on the clips that is taken in already.
    [Theory]
    [InlineData("clip")]
    [InlineData("beep")]
    public async Task Part_intake_waits_for_its_meter_and_takes_every_part_in_once(string pulledAt)
    {
        await using var bench = await ServedBench.StartAsync("small", "parts", Rate, "--unplugging", "--events");
        using var worker = HeardRun.Worker(["stock", "intake", "--stock", _folder.File("stock.jsonl"), "--count", "12", .. Meter(bench)]);
        await HandsAsync(bench, pulledAt, part: 4);

        await bench.UnplugAsync("capacitanceMeter");
        await worker.SaysAsync($"The capacitance meter at {bench.CapacitanceMeter} is gone.");
        await bench.PlugInAsync("capacitanceMeter");

        var run = await worker.EndAsync();
        output.WriteLine(run.Output + run.Errors);
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        Says(run, $"The capacitance meter at {bench.CapacitanceMeter} is gone. Look at its cable", "The capacitance meter is back.", "12 parts taken into");
        var measured = new StockLedger(_folder.File("stock.jsonl"), TimeProvider.System).Read().Entries
            .Select(entry => entry.Event).OfType<PartsTakenIn>().SelectMany(taken => taken.Parts).Select(part => part.Measured.Picofarads).Order().ToList();
        Assert.Equal(12, measured.Count);
        // Two per mille: four times the simulated meter's accuracy, and no two of the bench's parts lie so near each other.
        Assert.All(measured.Zip(BenchTruth.Parts("small"), (read, truth) => (Read: (double)read, Truth: truth)), pair => Assert.InRange(pair.Read / pair.Truth, 0.998, 1.002));
    }

    [Fact]
    public async Task The_calibration_of_a_fixture_waits_for_fixture_and_meter_and_every_relay_comes_out_right()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", Rate, "--unplugging");
        string[] flags = ["--fixture", bench.Fixture, .. Meter(bench)];
        using var worker = HeardRun.Worker(["fixture", "calibrate", "--out", _folder.File("made.json"), .. flags]);
        await worker.SaysAsync("sets of relays: ");

        foreach (var (instrument, name) in new[] { ("fixture", "fixture"), ("capacitanceMeter", "capacitance meter") })
        {
            await bench.UnplugAsync(instrument);
            await worker.SaysAsync($"The {name} at ");
            await bench.PlugInAsync(instrument);
            await worker.SaysAsync($"The {name} is back.");
        }

        var run = await worker.EndAsync();
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        // Against the bench's own relays, by readings of another run.
        var check = await Run.EndAsync(
            Programs.Start(Programs.Worker, ["fixture", "check", "--calibration", _folder.File("made.json"), .. flags]), Patience);
        output.WriteLine(run.Output + check.Output);
        Assert.True(check.ExitCode == 0, check.Output + check.Errors);
    }

    private static string[] Meter(ServedBench bench) =>
        ["--capacitance-meter", bench.CapacitanceMeter, "--clock-rate", Rate.ToString(CultureInfo.InvariantCulture)];

    private static async Task HandsAsync(ServedBench bench, string what, int part)
    {
        while (await bench.NextEventAsync().WaitAsync(Patience, TimeProvider.System) is var told)
        {
            if (told.GetProperty("event").GetString() == what && told.TryGetProperty("part", out var number) && number.GetInt32() == part)
                return;
        }
    }

    private static void Says(Run run, params string[] parts)
    {
        var words = HeardRun.Words(run.Output);
        Assert.All(parts, part => Assert.Contains(part, words, StringComparison.Ordinal));
    }
}
