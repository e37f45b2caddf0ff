using AutoSweep.Core;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Scpi;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Meters;

public sealed class ScpiLevelMeterTests
{
    private readonly ObservedTime _time = new();
    private readonly LogLines _log = new();

    [Theory]
    [InlineData(0.015, 0.1)]
    [InlineData(0.12, 0.1)] // a range reads 20 % beyond its name
    [InlineData(0.121, 1)]
    [InlineData(500, 10)]
    public async Task The_smallest_range_that_holds_the_level_is_chosen(double volts, double range)
    {
        await using var meter = await OpenAsync(new());
        await meter.PrepareLevelAsync(volts, 500, default);
        Assert.Equal(range, meter.RangeVolts);
    }

    [Theory]
    [InlineData(33, 3, 7)]
    [InlineData(100, 20, 1)]
    [InlineData(5000, 20, 1)]
    public async Task The_fastest_bandwidth_that_passes_the_tone_is_chosen(double hertz, int bandwidth, double settling)
    {
        var simple = new SimpleMeter();
        await using var meter = await OpenAsync(simple);
        await meter.PrepareLevelAsync(0.01, hertz, default);
        Assert.Contains($"DET:BAND {bandwidth}", simple.Commands);
        Assert.Equal(TimeSpan.FromSeconds(settling), meter.Settling);
    }

    [Fact]
    public async Task The_first_reading_after_a_change_waits_for_the_detector_and_the_next_does_not()
    {
        var simple = new SimpleMeter { Readings = new(["+5.1E-03", "+5.2E-03"]) };
        await using var meter = await OpenAsync(simple);
        await meter.PrepareLevelAsync(0.01, 500, default);
        var first = meter.ReadLevelAsync(default);
        await _time.AwaitedAsync(TimeSpan.FromSeconds(1));
        Assert.DoesNotContain("READ?", simple.Link.Lines);
        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(0.0051, (await first).Value);
        Assert.Equal(0.0052, (await meter.ReadLevelAsync(default)).Value);
    }

    [Fact]
    public async Task What_the_caller_has_waited_already_is_not_waited_again()
    {
        await using var meter = await OpenAsync(new());
        await meter.PrepareLevelAsync(0.01, 500, default);
        _time.Advance(meter.Settling);
        Assert.Equal(MeterReadingKind.Value, (await meter.ReadLevelAsync(default)).Kind); // would hang on the test's clock
    }

    [Fact]
    public async Task Coming_back_from_the_counter_sets_the_whole_function_up_again()
    {
        var simple = new SimpleMeter();
        await using var meter = await OpenAsync(simple);
        await meter.PrepareLevelAsync(0.01, 500, default);
        var count = meter.CountFrequencyAsync(default);
        await _time.ElapseAsync(TimeSpan.FromSeconds(0.5));
        await count;
        var level = meter.ReadLevelAsync(default);
        await _time.ElapseAsync(TimeSpan.FromSeconds(1));
        await level;
        Assert.Equal(
            ["*RST", "CONF:VOLT:AC 0.1", "DET:BAND 20", "CONF:FREQ", "FREQ:APER 0.1", "CONF:VOLT:AC 0.1", "DET:BAND 20"], simple.Commands);
    }

    [Fact]
    public async Task An_optional_command_that_the_meter_refuses_is_logged_and_left_out()
    {
        var simple = new SimpleMeter { Refused = ["DET:BAND"] };
        await using var meter = await OpenAsync(simple);
        await meter.PrepareLevelAsync(0.01, 500, default);
        await meter.PrepareLevelAsync(0.5, 500, default);
        Assert.Single(simple.Commands, command => command.StartsWith("DET:BAND", StringComparison.Ordinal));
        Assert.Equal(TimeSpan.FromSeconds(1.5), meter.Settling);
        Assert.Contains(_log.Lines, line => line.Contains("refuses DET:BAND 20 (-113 \"Undefined header\")", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_required_command_that_the_meter_refuses_is_a_fault_with_the_meters_own_words()
    {
        await using var meter = await OpenAsync(new() { Refused = ["CONF:VOLT:AC"] });
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => meter.PrepareLevelAsync(0.01, 500, default));
        Assert.Equal(BenchFault.WrongIdentity, fault.Kind);
        Assert.Contains("CONF:VOLT:AC 0.1: -113 \"Undefined header\"", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_meter_of_another_identity_is_not_set_up()
    {
        var simple = new SimpleMeter { Identity = "Other Works,X9,1,1" };
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => OpenAsync(simple));
        Assert.Equal(BenchFault.WrongIdentity, fault.Kind);
        Assert.Contains("Other Works,X9", fault.Found, StringComparison.Ordinal);
        Assert.Empty(simple.Commands);
    }

    [Theory]
    [InlineData("+9.90000000E+37", MeterReadingKind.Overload)]
    [InlineData("+9.91000000E+37", MeterReadingKind.NoData)]
    [InlineData("-1.0E-03", MeterReadingKind.Invalid)] // a true-rms level is never negative
    [InlineData("HI", MeterReadingKind.Invalid)]
    public async Task A_reply_without_a_level_is_told_apart(string reply, MeterReadingKind kind)
    {
        await using var meter = await OpenAsync(new() { Readings = new([reply]) });
        await meter.PrepareLevelAsync(0.01, 500, default);
        _time.Advance(meter.Settling);
        Assert.Equal(kind, (await meter.ReadLevelAsync(default)).Kind);
    }

    [Fact]
    public async Task A_query_that_the_meter_does_not_know_is_a_fault_with_the_meters_own_words()
    {
        var simple = new SimpleMeter { Refused = ["READ?"] };
        await using var meter = await OpenAsync(simple, retries: 0);
        await meter.PrepareLevelAsync(0.01, 500, default);
        _time.Advance(meter.Settling);
        var reading = meter.ReadLevelAsync(default);
        await _time.ElapseAsync(TimeSpan.FromSeconds(3.5)); // 1.5 times 1 s of settling, and 2 s
        await _time.ElapseAsync(new ExchangeOptions().QuietTime);
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => reading);
        Assert.Equal(BenchFault.NoAnswer, fault.Kind);
        Assert.Contains("The meter reports -113 \"Undefined header\"", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_meter_without_a_beeper_is_used_without_it()
    {
        var simple = new SimpleMeter { Refused = ["SYST:BEEP"] };
        await using var meter = await OpenAsync(simple);
        await meter.BeepAsync(default);
        await meter.BeepAsync(default);
        Assert.Single(simple.Commands, "SYST:BEEP");
    }

    private async Task<ScpiLevelMeter> OpenAsync(SimpleMeter simple, int retries = 2)
    {
        var session = new ScpiSession(simple.Link, MeterSessionOptions.Of(Drivers.Small, new() { Retries = retries }), _time, _log);
        return await ScpiLevelMeter.OpenAsync(session, Drivers.Small, _time, _log, default);
    }
}
