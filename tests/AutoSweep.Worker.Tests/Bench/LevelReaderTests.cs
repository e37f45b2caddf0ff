using AutoSweep.Core;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class LevelReaderTests
{
    private readonly FakeMeter _meter = new();

    [Fact]
    public async Task A_level_is_the_mean_at_the_terminal_with_the_amplifiers_gain_taken_out()
    {
        _meter.Level(0.100, 0.101, 0.099);

        var sample = await Reader(gain: 20).ReadAsync(default);

        Assert.Equal(5.0, sample.Mean.Millivolts, 9);
        Assert.Equal(0.05, sample.SampleSd.Millivolts, 9);
        Assert.True(sample.Settled);
    }

    [Fact]
    public async Task What_the_meter_is_uncertain_by_adds_to_the_noise_in_quadrature()
    {
        _meter.Level(0.100, 0.101, 0.099);
        _meter.Uncertainty = 0.003;

        var sample = await Reader(gain: 20).ReadAsync(default);

        Assert.Equal(Math.Sqrt((sample.RelativeNoise * sample.RelativeNoise) + (0.03 * 0.03)), sample.RelativeUncertainty!.Value, 12);
    }

    [Fact]
    public async Task A_meter_whose_limits_nobody_knows_states_no_uncertainty()
    {
        _meter.Level(0.100, 0.101, 0.099);

        Assert.Null((await Reader().ReadAsync(default)).RelativeUncertainty);
    }

    [Fact]
    public async Task Samples_that_still_climb_are_thrown_away_and_taken_again()
    {
        _meter.Level(0.010, 0.030, 0.040, 0.0499, 0.0500, 0.0501);

        var sample = await Reader().ReadAsync(default);

        Assert.Equal(50.0, sample.Mean.Millivolts, 3);
        Assert.True(sample.Settled);
    }

    [Fact]
    public async Task A_level_that_climbs_through_every_retake_is_called_unsettled()
    {
        for (var value = 0.010; value < 0.080; value *= 1.1)
            _meter.Level(value);

        Assert.False((await Reader().ReadAsync(default)).Settled);
    }

    [Fact]
    public async Task A_level_that_wobbles_about_the_same_mean_is_settled()
    {
        _meter.Level(0.050, 0.053, 0.056, 0.056, 0.053, 0.050);

        Assert.True((await Reader().ReadAsync(default)).Settled);
    }

    [Fact]
    public async Task An_overload_goes_a_range_up_and_never_counts_as_a_level()
    {
        _meter.Overload();
        _meter.Level(0.5, 0.5, 0.5);

        var sample = await Reader().ReadAsync(default);

        Assert.Equal(0.5, sample.Mean.Volts, 9);
        Assert.Equal(1, _meter.RangeVolts);
    }

    [Fact]
    public async Task A_meter_that_never_gives_a_number_is_a_fault()
    {
        for (var count = 0; count < 20; count++)
            _meter.Overload();

        Assert.Equal(BenchFault.NoAnswer, (await Assert.ThrowsAsync<BenchFaultException>(() => Reader().ReadAsync(default))).Kind);
    }

    [Fact]
    public async Task The_noise_told_to_the_search_learns_from_the_samples()
    {
        var reader = Reader();
        LevelSample? last = null;
        for (var count = 0; count < 40; count++)
        {
            _meter.Level(0.0495, 0.0505, 0.0495);
            last = await reader.ReadAsync(default);
        }

        // Samples of 0.0495, 0.0505, 0.0495 V have a standard deviation of 0.577 mV, 1.16 % of their mean; of three 0.67 %.
        Assert.Equal(0.0067, last!.RelativeNoise, 0.0003);
    }

    [Fact]
    public async Task One_wild_reading_does_not_spoil_what_is_known_of_the_noise()
    {
        var reader = Reader();
        for (var count = 0; count < 20; count++)
        {
            _meter.Level(0.0499, 0.0501, 0.0499);
            await reader.ReadAsync(default);
        }

        _meter.Level(0.001, 0.05, 0.001, 0.001, 0.05, 0.001);
        await reader.ReadAsync(default);
        _meter.Level(0.0499, 0.0501, 0.0499);

        Assert.InRange((await reader.ReadAsync(default)).RelativeNoise, 0.0012, 0.0025);
    }

    private LevelReader Reader(double gain = 1) =>
        new(new ConnectedBench(new() { AmplifierGain = gain }, _meter, null), new() { Span = TimeSpan.Zero }, TimeProvider.System, NullLogger<LevelReader>.Instance);
}
