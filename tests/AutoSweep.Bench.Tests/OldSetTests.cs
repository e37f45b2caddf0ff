using System.Globalization;
using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Stock;
using Xunit.Abstractions;

namespace AutoSweep.Bench.Tests;

/// <summary>The capacitors that came off, read over the capacitance meter's wire as its display asks for them.</summary>
public sealed class OldSetTests(ITestOutputHelper output) : IDisposable
{
    private const double Rate = 20;

    private readonly TemporaryFolder _folder = new();

    private string Stock => _folder.File("stock.jsonl");

    private string Job => _folder.File("job");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task The_whole_old_set_is_read_as_the_display_asks_for_it()
    {
        await using var bench = await ServedBench.StartAsync("small", "parts", Rate);
        BeginJob(bench);
        var typed = await Run.WorkerAsync("stock", "old", "--job", Job, "--stock", Stock, "--output", "9", "--measured", "131n", "--nominal", "100n", "--year", "1957");
        Assert.True(typed.ExitCode == 0, typed.Output + typed.Errors);
        var run = await OldSetAsync(bench, "--nominal", "100n", "--year", "1958");
        output.WriteLine(run.Output + run.Errors);

        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        Assert.Contains("5 old capacitors written down", run.Output, StringComparison.Ordinal);
        var truth = BenchTruth.Aged("small");
        var olds = new StockLedger(Stock, TimeProvider.System).Read().OldCapacitors.Values.ToDictionary(old => old.Output);
        Assert.Equal(truth.Keys.Order(), olds.Keys.Order());
        Assert.Equal((131_000L, 1957), (olds[9].Measured!.Picofarads, olds[9].MadeIn));
        Assert.All(truth.Where(old => old.Key != 9), old =>
        {
            var read = olds[old.Key];
            // Two per mille: four times the simulated meter's accuracy. The meter's readings of D scatter by 0.0001.
            Assert.InRange(read.Measured!.Picofarads / old.Value.Picofarads, 0.998, 1.002);
            Assert.InRange(read.Measured.Dissipation!.Value, old.Value.LossTangent - 0.001, old.Value.LossTangent + 0.001);
            Assert.Equal((100_000L, 1958), (read.NominalPicofarads, read.MadeIn));
        });

        var again = await OldSetAsync(bench);
        Assert.Contains("0 old capacitors written down", again.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task One_that_is_no_capacitor_any_more_is_said_at_the_terminal_with_a_meter_and_without(bool metered)
    {
        // These hands wait for the survey's beeps: nothing comes on the capacitance meter's clips.
        await using var bench = await ServedBench.StartAsync("small", "survey", Rate);
        BeginJob(bench);
        string[] meter = metered ? ["--capacitance-meter", bench.CapacitanceMeter, "--clock-rate", Rate.ToString(CultureInfo.InvariantCulture)] : [];
        await using var terminal = new TypedProgram(Programs.Worker, ["stock", "old-set", "--job", Job, "--stock", Stock, .. meter]);
        var asked = await AskedAsync(terminal);
        await terminal.TypeAsync("what?");
        await terminal.TypeAsync("x");
        var second = await AskedAsync(terminal);
        await terminal.TypeAsync("s");
        var third = await AskedAsync(terminal);
        await terminal.TypeAsync("q");
        while (await terminal.NextAsync() is not null)
        {
        }

        Assert.True(await terminal.EndAsync() == 0, await terminal.TranscriptAsync());
        Assert.Equal(3, new HashSet<int> { asked, second, third }.Count);
        Assert.Contains(terminal.Seen, line => line.Contains("'what?' is", StringComparison.Ordinal));
        Assert.Contains(terminal.Seen, line => line.Contains("1 old capacitors written down", StringComparison.Ordinal));
        var old = Assert.Single(new StockLedger(Stock, TimeProvider.System).Read().OldCapacitors.Values);
        Assert.Equal((asked, (PartMeasurement?)null), (old.Output, old.Measured));
    }

    // "  output  61: its old capacitor, please"
    private static async Task<int> AskedAsync(TypedProgram terminal)
    {
        while (await terminal.NextAsync() is { } line)
        {
            if (line.EndsWith("its old capacitor, please", StringComparison.Ordinal))
                return int.Parse(line.Split(':')[0].Split(' ')[^1], CultureInfo.InvariantCulture);
        }

        throw new InvalidOperationException(await terminal.TranscriptAsync());
    }

    private void BeginJob(ServedBench bench)
    {
        var profile = GeneratorProfileFile.Read(bench.Ready.GetProperty("generator").GetString()!);
        JobRecord.Begin(JobFolder.Open(Job), profile, "a test", TimeProvider.System).Dispose();
    }

    private Task<Run> OldSetAsync(ServedBench bench, params string[] more) => Run.WorkerAsync(
    [
        "stock", "old-set", "--job", Job, "--stock", Stock, "--capacitance-meter", bench.CapacitanceMeter,
        "--clock-rate", Rate.ToString(CultureInfo.InvariantCulture), .. more,
    ]);
}
