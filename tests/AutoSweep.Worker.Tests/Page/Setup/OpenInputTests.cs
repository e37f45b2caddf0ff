using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Page.Setup;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.Setup;

public sealed class OpenInputTests
{
    [Theory]
    [InlineData(0.02, null, WireVerdict.Good, "quiet: 0.02 mV of noise over 3 readings")]
    [InlineData(0.3, 50.2, WireVerdict.Look, "0.3 mV of mains hum at 50 Hz over 3 readings")]
    [InlineData(0.3, 119.1, WireVerdict.Look, "0.3 mV of mains hum at 119 Hz over 3 readings")]
    [InlineData(4.6, 740.0, WireVerdict.NotGood, "4.6 mV of a tone of 740 Hz over 3 readings")]
    public void The_open_input_is_judged_in_plain_words(double millivolts, double? hertz, WireVerdict verdict, string found)
    {
        var result = OpenInput.Judge([millivolts, millivolts, millivolts], hertz);

        Assert.Equal((verdict, found), (result.Verdict, result.Found));
        Assert.Equal(verdict == WireVerdict.Good, result.WhatToDo.Length == 0);
    }

    [Fact]
    public async Task The_amplifiers_gain_is_taken_out_and_a_count_that_never_agrees_is_noise()
    {
        var counts = new Queue<double>([50, 70]);
        var meter = new FakeMeter { Shown = () => 0.002, Heard = counts.Dequeue };

        var result = await WireChecks.IsQuietAsync(meter, 20, TimeSpan.Zero, TimeProvider.System, default);

        Assert.Equal("0.1 mV of noise over 20 readings", result.Found);
    }

    [Fact]
    public async Task An_overload_of_the_open_input_is_not_good()
    {
        var meter = new FakeMeter();
        meter.Level(0.001);
        meter.Overload();

        Assert.Equal(WireVerdict.NotGood, (await WireChecks.IsQuietAsync(meter, 1, TimeSpan.Zero, TimeProvider.System, default)).Verdict);
    }

    [Theory]
    [InlineData(MeterReadingKind.Value, WireVerdict.Good)]
    [InlineData(MeterReadingKind.Overload, WireVerdict.Good)]
    [InlineData(MeterReadingKind.Invalid, WireVerdict.NotGood)]
    public async Task A_meter_reads_when_it_gives_a_level_or_says_that_it_is_too_much(MeterReadingKind kind, WireVerdict verdict)
    {
        var meter = new FakeMeter();
        meter.Levels.Enqueue(new(kind, 0.001, "?"));

        Assert.Equal(verdict, (await WireChecks.ReadsAsync(meter, default)).Verdict);
    }
}
