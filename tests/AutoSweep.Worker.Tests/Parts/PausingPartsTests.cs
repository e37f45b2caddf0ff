using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Parts;

/// <summary>A capacitance meter that is unplugged while parts come: none is taken in twice, and none is made of readings around the gap.</summary>
public sealed class PausingPartsTests
{
    private readonly ReturningMeters _place = new();
    private readonly FakeCapacitanceMeter _before = new();
    private readonly FakeCapacitanceMeter _after = new();

    [Fact]
    public async Task A_part_that_was_being_read_is_read_anew_from_its_first_reading_on()
    {
        _before.Reads(100_000, 100_000, 100_000);
        _before.Fails(ReturningMeters.Lost());
        _after.Reads(100_060, 100_060, 100_060, 100_060);

        var part = await _place.PassAsync(Parts().NextAsync(default));

        // With one reading of before, the mean would be 100 045.
        Assert.Equal(100_060, part!.Capacitance.Picofarads);
    }

    [Fact]
    public async Task A_part_that_is_taken_in_already_and_still_lies_there_is_not_taken_in_again()
    {
        var parts = Parts();
        _before.Reads(100_000, 100_000, 100_000, 100_000, 100_000);
        _before.Fails(ReturningMeters.Lost());
        _after.Reads(100_010, 100_010, 100_010, 100_010, 100_010, 100_010, 100_010, 100_010, 100_010, 0.4, 47_000, 47_000, 47_000, 47_000);
        await parts.NextAsync(default);

        Assert.Equal(47_000, (await _place.PassAsync(parts.NextAsync(default)))!.Capacitance.Picofarads);
    }

    [Theory]
    [InlineData(true, "beep")]
    [InlineData(false, "beep", "beep")]
    public async Task A_part_that_still_lies_there_hears_its_beep_again_because_the_first_may_have_been_lost(bool isFine, params string[] told)
    {
        var parts = Parts();
        _before.Reads(100_000, 100_000, 100_000, 100_000);
        _before.Fails(ReturningMeters.Lost());
        _after.Reads(100_010, 100_010, 100_010, 100_010, 0.4, 47_000, 47_000, 47_000, 47_000);
        await parts.NextAsync(default);
        await parts.SignalAsync(isFine, default);

        await _place.PassAsync(parts.NextAsync(default));

        Assert.Equal(told, _after.Told);
    }

    [Theory]
    [InlineData(0.4)]
    [InlineData(47_000.0, 47_000.0, 47_000.0, 47_000.0)]
    public async Task A_part_that_was_clipped_in_its_place_meanwhile_counts_and_hears_nothing_before(params double[] first)
    {
        var parts = Parts();
        _before.Reads(100_000, 100_000, 100_000, 100_000);
        _before.Fails(ReturningMeters.Lost());
        _after.Reads([.. first, 47_000, 47_000, 47_000, 47_000]);
        await parts.NextAsync(default);
        await parts.SignalAsync(true, default);

        Assert.Equal(47_000, (await _place.PassAsync(parts.NextAsync(default)))!.Capacitance.Picofarads);

        Assert.Empty(_after.Told);
    }

    [Fact]
    public async Task A_beep_after_which_the_meter_has_given_a_part_is_not_repeated()
    {
        var parts = Parts();
        _before.Reads(100_000, 100_000, 100_000, 100_000, 0.4, 47_000, 47_000, 47_000, 47_000);
        _before.Fails(ReturningMeters.Lost());
        _after.Reads(0.4, 33_000, 33_000, 33_000, 33_000);
        await parts.NextAsync(default);
        await parts.SignalAsync(true, default);
        await parts.NextAsync(default);

        await _place.PassAsync(parts.NextAsync(default));

        Assert.Empty(_after.Told);
    }

    [Fact]
    public async Task The_parts_that_were_asked_for_are_shown_again()
    {
        var parts = Parts();
        _before.Fails(ReturningMeters.Lost());
        _after.Reads(47_000, 47_000, 47_000, 47_000);
        await parts.AskForAsync(61, ["P00017", "P00022"], default);

        await _place.PassAsync(parts.NextAsync(default));

        Assert.Equal(["61: P00017 + P00022"], _before.Told);
        Assert.Equal(["61: P00017 + P00022"], _after.Told);
    }

    private PausingParts Parts() => new(_place.ThenGone().Then(_after).Begin(_before), new());
}
