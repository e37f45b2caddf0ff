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
        using (JobRecord.Begin(JobFolder.Open(Job), GeneratorProfileFile.Read(bench.Ready.GetProperty("generator").GetString()!), "a test", TimeProvider.System))
        {
        }

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

    private Task<Run> OldSetAsync(ServedBench bench, params string[] more) => Run.WorkerAsync(
    [
        "stock", "old-set", "--job", Job, "--stock", Stock, "--capacitance-meter", bench.CapacitanceMeter,
        "--clock-rate", Rate.ToString(CultureInfo.InvariantCulture), .. more,
    ]);
}
