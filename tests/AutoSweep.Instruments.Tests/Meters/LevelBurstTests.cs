using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Scpi;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Meters;

public sealed class LevelBurstTests
{
    private const string Eight = "+1.0E-1,+1.1E-1,+1.2E-1,+1.3E-1,+1.4E-1,+1.5E-1,+1.6E-1,+1.7E-1";
    private readonly ObservedTime _time = new();
    private readonly LogLines _log = new();

    [Fact]
    public async Task A_series_is_asked_for_once_and_comes_with_its_spacing()
    {
        var simple = new SimpleMeter { Readings = new([Eight]) };
        await using var meter = await OpenAsync(simple);

        var burst = await meter.ReadBurstAsync(default);

        Assert.Equal([0.1, 0.11, 0.12, 0.13, 0.14, 0.15, 0.16, 0.17], burst!.Volts);
        Assert.Equal(TimeSpan.FromMilliseconds(21), burst.Interval);
        Assert.Equal(["DET:BAND 200", "SAMP:COUN 8"], simple.Commands.TakeLast(2));
        Assert.Single(simple.Link.Lines, "READ?");
    }

    [Fact]
    public async Task The_next_reading_sends_the_whole_set_up_again()
    {
        var simple = new SimpleMeter { Readings = new([Eight, "+5.0E-03"]) };
        await using var meter = await OpenAsync(simple);
        await meter.ReadBurstAsync(default);
        var before = simple.Commands.Count();

        Assert.Equal(0.005, (await meter.ReadLevelAsync(default)).Value);
        Assert.StartsWith("CONF:VOLT:AC", simple.Commands.ElementAt(before), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("DET:BAND")]
    [InlineData("SAMP:COUN")]
    public async Task A_meter_that_refuses_takes_no_series_and_is_not_asked_again(string header)
    {
        var simple = new SimpleMeter { Refused = [header] };
        await using var meter = await OpenAsync(simple);

        Assert.Null(await meter.ReadBurstAsync(default));
        var sent = simple.Commands.Count(command => command.StartsWith(header + " ", StringComparison.Ordinal));
        Assert.Null(await meter.ReadBurstAsync(default));
        Assert.Equal(sent, simple.Commands.Count(command => command.StartsWith(header + " ", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("+1.0E-1")]
    [InlineData("+1.0E-1,+1.1E-1,+1.2E-1,+9.9E37,+1.4E-1,+1.5E-1,+1.6E-1,+1.7E-1")]
    public async Task A_short_series_and_one_with_an_overload_is_none(string reply)
    {
        await using var meter = await OpenAsync(new() { Readings = new([reply]) });

        Assert.Null(await meter.ReadBurstAsync(default));
    }

    // A one-pole detector passes 1/sqrt(2) at 1/(2 pi tau), and an average over a whole period nothing (any textbook on signals).
    [Fact]
    public void Detector_and_aperture_even_a_swing_out_as_the_textbook_says()
    {
        Assert.Equal(Math.Sqrt(0.5), new LevelBurst([], TimeSpan.Zero, TimeSpan.Zero, TimeSpan.FromSeconds(0.01)).Passes(1 / (2 * Math.PI * 0.01)), 1e-12);
        Assert.Equal(0, new LevelBurst([], TimeSpan.Zero, TimeSpan.FromSeconds(0.02), TimeSpan.Zero).Passes(50), 1e-12);
        Assert.Equal(2 / Math.PI, new LevelBurst([], TimeSpan.Zero, TimeSpan.FromSeconds(0.02), TimeSpan.Zero).Passes(25), 1e-12);
    }

    private async Task<ScpiLevelMeter> OpenAsync(SimpleMeter simple)
    {
        var session = new ScpiSession(simple.Link, MeterSessionOptions.Of(Drivers.Small, new()), _time, _log);
        return await ScpiLevelMeter.OpenAsync(session, Drivers.Small with { Level = Drivers.Small.Level! with
        {
            Bandwidths = [new() { Hertz = 20, FromToneHertz = 3, SettleSeconds = 0, Source = "test" }],
            SettleWithoutBandwidthSeconds = 0,
        } }, _time, _log, default);
    }
}
