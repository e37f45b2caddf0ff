using System.Globalization;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Meter;

/// <summary>What the meter reads of a clipped output.</summary>
public class LevelReadingTests
{
    private const string Direct = "CONF:VOLT:AC 1;:TRIG:DEL 0";

    [Fact]
    public async Task At_the_true_peak_the_settled_level_is_the_truths_times_the_amplifiers_gain()
    {
        using var bench = new TestBench(TestBench.Quiet);
        var truth = bench.Definition.Truth.Outputs.First(output => output.Peak is not null);
        await bench.MeterAsync(Direct);
        await NearPeakAsync(bench, truth);
        bench.Bench.Clip(truth.Output, withFixture: true);
        await bench.PassAsync(3);

        // The nearest setting is at most 50 pF plus relay tolerance off; at the peak's flat top that is nothing.
        Assert.Equal(1, await ReadAsync(bench) / (truth.Peak!.Millivolts * 1e-3 * bench.Definition.FrontEnd.Gain), 1e-4);
    }

    [Fact]
    public async Task As_found_levels_are_read_with_the_aged_capacitor_in()
    {
        using var bench = new TestBench(TestBench.Quiet);
        await bench.MeterAsync(Direct);
        foreach (var truth in bench.Definition.Truth.Outputs)
        {
            bench.Bench.Clip(truth.Output, withFixture: false);
            await bench.PassAsync(3);
            Assert.Equal(truth.AsFoundMillivolts * 1e-3 * bench.Definition.FrontEnd.Gain, await ReadAsync(bench), 2e-6);
        }
    }

    [Fact]
    public async Task An_aged_capacitor_that_is_off_stays_off()
    {
        using var bench = new TestBench(TestBench.Quiet);
        var truth = bench.Definition.Truth.Outputs.First(output => output.Peak is not null);
        await bench.MeterAsync(Direct);
        bench.Bench.Clip(truth.Output, withFixture: true);
        bench.Bench.Clip(truth.Output, withFixture: false);
        await bench.PassAsync(3);

        // A series filter without its capacitor passes nothing.
        Assert.Equal(0, await ReadAsync(bench), 2e-6);
    }

    [Theory]
    [InlineData(3, 0.7)]
    [InlineData(20, 0.1)]
    [InlineData(200, 0.01)]
    public async Task The_detector_settles_exponentially_with_its_filters_time_constant(int filter, double timeConstant)
    {
        using var bench = new TestBench(TestBench.Quiet);
        await bench.MeterAsync($"{Direct};:DET:BAND {filter}");
        bench.Bench.Clip(1, withFixture: false);
        await bench.PassAsync(timeConstant - 0.02);
        var early = await ReadAsync(bench);
        await bench.PassAsync(20 * timeConstant);
        Assert.Equal(1 - Math.Exp(-Math.Max(1, 0.02 / timeConstant)), early / await ReadAsync(bench), 2e-3);
    }

    [Fact]
    public async Task A_change_of_range_must_settle_again()
    {
        using var bench = new TestBench(TestBench.Quiet);
        await bench.MeterAsync(Direct);
        bench.Bench.Clip(1, withFixture: false);
        await bench.PassAsync(3);
        var settled = await ReadAsync(bench);
        await bench.MeterAsync("VOLT:AC:RANG 10");
        Assert.True(await ReadAsync(bench) < 0.5 * settled);
        await bench.PassAsync(3);
        Assert.Equal(settled, await ReadAsync(bench), 2e-5);
    }

    [Fact]
    public async Task Over_120_per_cent_of_the_range_the_meter_says_overload()
    {
        using var bench = new TestBench(bench => TestBench.Quiet(bench) with { FrontEnd = bench.FrontEnd with { Gain = 60 } });
        await bench.MeterAsync("CONF:VOLT:AC 0.1;:TRIG:DEL 0");
        bench.Bench.Clip(1, withFixture: false);
        await bench.PassAsync(3);
        Assert.Equal("+9.90000000E+37", await bench.MeterAsync("READ?"));
    }

    [Fact]
    public async Task The_automatic_delay_waits_until_the_filter_has_settled_before_each_sample()
    {
        using var bench = new TestBench();
        await bench.MeterAsync("CONF:VOLT:AC 1;:DET:BAND 20;:SAMP:COUN 3");
        var before = bench.Clock.Now;
        var samples = (await bench.MeterAsync("READ?"))!.Split(',');
        Assert.Equal(3, samples.Length);
        Assert.Equal(3 * 1.02, (bench.Clock.Now - before).TotalSeconds, 1e-6);
    }

    [Fact]
    public async Task Samples_scatter_by_the_noise_that_the_bench_file_says()
    {
        using var bench = new TestBench(bench => TestBench.Quiet(bench) with
        {
            Meter = TestBench.Quiet(bench).Meter with { NoisePercentOfReading = 0.5 },
        });
        await bench.MeterAsync(Direct + ";:SAMP:COUN 400");
        bench.Bench.Clip(1, withFixture: false);
        await bench.PassAsync(3);
        var samples = (await bench.MeterAsync("READ?"))!.Split(',').Select(Number).ToList();
        var mean = samples.Average();
        var sd = Math.Sqrt(samples.Sum(sample => Math.Pow(sample - mean, 2)) / (samples.Count - 1)) / mean;
        Assert.InRange(sd, 0.0042, 0.0058);
    }

    [Fact]
    public async Task Wobble_swings_the_readings_of_a_fast_filter_and_hardly_those_of_a_slow_one()
    {
        using var bench = new TestBench(bench => TestBench.Quiet(bench) with
        {
            Outputs = [.. TestBench.Quiet(bench).Outputs.Select(output => output with { WobblePercent = 2 })],
        });
        bench.Bench.Clip(1, withFixture: false);
        var spreads = new List<double>();
        foreach (var filter in new[] { 200, 3 })
        {
            await bench.MeterAsync($"{Direct};:DET:BAND {filter};:SAMP:COUN 100");
            await bench.PassAsync(20);
            var samples = (await bench.MeterAsync("READ?"))!.Split(',').Select(Number).ToList();
            spreads.Add((samples.Max() - samples.Min()) / samples.Average());
        }

        Assert.InRange(spreads[0], 0.005, 0.04);
        Assert.InRange(spreads[1], 0, 0.001);
    }

    [Fact]
    public async Task An_interrupted_query_gives_no_answer_but_an_error()
    {
        using var bench = new TestBench();
        using var interruption = new CancellationTokenSource();
        await bench.MeterAsync("TRIG:SOUR EXT");
        var reading = bench.Meter.ExecuteAsync("READ?", interruption.Token).AsTask();
        Assert.False(reading.IsCompleted);
        await interruption.CancelAsync();
        Assert.Null(await reading);
        Assert.Equal("-410,\"Query INTERRUPTED\"", await bench.MeterAsync("SYST:ERR?"));
        await bench.MeterAsync("TRIG:SOUR IMM");
        Assert.NotNull(await bench.MeterAsync("READ?"));
    }

    [Fact]
    public async Task A_bus_trigger_starts_what_init_has_armed()
    {
        using var bench = new TestBench();
        await bench.MeterAsync("TRIG:SOUR BUS;:SAMP:COUN 2;:INIT;*TRG");
        Assert.Equal(2, (await bench.MeterAsync("FETC?"))!.Split(',').Length);
    }

    private static async Task NearPeakAsync(TestBench bench, OutputTruth truth)
    {
        var rest = truth.Peak!.Picofarads - bench.Definition.Fixture.StrayPicofarads;
        foreach (var (relay, index) in bench.Definition.Fixture.Relays.Select((relay, index) => (relay, index)).Reverse())
        {
            if (relay.Picofarads > rest) continue;
            rest -= relay.Picofarads;
            await bench.FixtureAsync(string.Create(CultureInfo.InvariantCulture, $"ROUT:CLOS (@{index + 1});*OPC?"));
        }
    }

    private static async Task<double> ReadAsync(TestBench bench) => Number((await bench.MeterAsync("READ?"))!);

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
