using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Parts;

public sealed class PartWatchTests
{
    private readonly FakeCapacitanceMeter _meter = new();

    [Fact]
    public async Task A_part_is_the_mean_of_readings_that_agree()
    {
        _meter.Reads(0.4, 60_000, 99_000, 100_010, 99_990, 100_005, 99_995);

        var part = await Watch().NextAsync(default);

        Assert.Equal(100_000, part!.Capacitance.Picofarads);
        Assert.Equal(0.0004, part.Dissipation!.Value, 9);
    }

    // JCGM 100:2008, 4.3.7: a limit of 0.05 % and 0.05 pF counts as rectangular, limit over the square root of 3; 4.2.3 for the scatter of the mean.
    [Fact]
    public async Task Its_uncertainty_holds_scatter_gain_and_offset_in_the_manner_of_the_GUM()
    {
        _meter.Reads(100_010, 99_990, 100_010, 99_990);

        var part = await Watch().NextAsync(default);

        var scatter = Math.Sqrt(4 * 100 / 3.0) / 2;
        Assert.Equal(Math.Sqrt((scatter * scatter) + Math.Pow(50 / Math.Sqrt(3), 2) + (0.05 * 0.05 / 3.0)), part!.StandardUncertaintyPicofarads, 6);
    }

    [Fact]
    public async Task The_next_part_is_read_only_after_the_clips_were_empty()
    {
        var watch = Watch();
        _meter.Reads(100_000, 100_000, 100_000, 100_000);
        await watch.NextAsync(default);
        _meter.Reads(100_000, 100_000, 100_000, 100_000, 100_000, 100_000);
        _meter.Reads(CapacitanceReadingKind.NoContact);
        _meter.Reads(47_000, 47_001, 46_999, 47_000);

        Assert.Equal(47_000, (await watch.NextAsync(default))!.Capacitance.Picofarads);
    }

    [Fact]
    public async Task A_short_or_an_odd_answer_never_counts_as_a_part()
    {
        _meter.Reads(100_000, 100_000, 100_000);
        _meter.Reads(CapacitanceReadingKind.Overload);
        _meter.Reads(CapacitanceReadingKind.Invalid);
        _meter.Reads(47_000, 47_000, 47_000, 47_000);

        Assert.Equal(47_000, (await Watch().NextAsync(default))!.Capacitance.Picofarads);
    }

    [Fact]
    public async Task What_lay_on_the_clips_before_the_first_old_capacitor_was_asked_for_is_not_it()
    {
        var watch = Watch();
        _meter.Reads(47_000, 47_000, 47_000, 47_000);
        _meter.Reads(CapacitanceReadingKind.NoContact);
        _meter.Reads(100_000, 100_000, 100_000, 100_000);

        await watch.AskForAsync(9, [], default);

        Assert.Equal(100_000, (await watch.NextAsync(default))!.Capacitance.Picofarads);
        Assert.Equal("9: OLD", _meter.Told[0]);
    }

    private PartWatch Watch() => new(_meter, new());
}
