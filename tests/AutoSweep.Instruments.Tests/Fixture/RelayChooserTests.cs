using System.Numerics;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Tests.Support;
using FsCheck.Xunit;

namespace AutoSweep.Instruments.Tests.Fixture;

public sealed class RelayChooserTests
{
    [Property(MaxTest = 15)]
    public void No_combination_is_nearer_and_no_equally_near_one_moves_fewer_relays(int seed, ushort wantedTens, ushort present)
    {
        var calibration = Calibrations.Real(seed);
        var wanted = new Capacitance(wantedTens * 16L);
        var choice = new RelayChooser(calibration.Stray, calibration.Relays).Choose(wanted, new(present));
        var (stray, relays) = (calibration.Stray.Picofarads, calibration.Relays.Select(relay => relay.Picofarads).ToArray());
        var best = Enumerable.Range(0, 1 << 16)
            .Select(mask => (Distance: Math.Abs(Total(stray, relays, (uint)mask) - wanted.Picofarads),
                Operations: BitOperations.PopCount((uint)mask ^ present)))
            .Min();
        Assert.Equal(best, (Math.Abs(choice.Total.Picofarads - wanted.Picofarads), choice.Closed.OperationsTo(new(present))));
        Assert.Equal(choice.Total.Picofarads, Total(stray, relays, choice.Closed.Mask));
    }

    [Theory] // 200 pF more than the stray: relay 2 or relay 3 alone, whichever is closed already
    [InlineData(0b0010)]
    [InlineData(0b0100)]
    public void Of_two_equal_relays_the_one_that_is_closed_already_stays(uint present) =>
        Assert.Equal(present, Ideal().Choose(new(350), new(present)).Closed.Mask);

    [Theory]
    [InlineData(0, 150)]
    [InlineData(5_000_000, 1_000_050)]
    public void Beyond_its_ends_the_end_is_the_nearest(long wanted, long total) =>
        Assert.Equal(new(total), Ideal().Choose(new(wanted), RelaySet.None).Total);

    [Fact]
    public void Between_two_equally_far_values_the_one_with_fewer_operations_is_taken()
    {
        // 50 pF above the stray lies 50 pF from "all open" and from relay 1.
        Assert.Equal(new(0b0000), Ideal().Choose(new(200), new(0b0000)).Closed);
        Assert.Equal(new(0b0001), Ideal().Choose(new(200), new(0b0001)).Closed);
    }

    [Fact]
    public void Twenty_relays_are_no_trouble()
    {
        var relays = Enumerable.Range(0, 20).Select(relay => new Capacitance(1L << relay)).ToArray();
        Assert.Equal(new RelaySet(777_777), new RelayChooser(Capacitance.Zero, relays).Choose(new(777_777), RelaySet.None).Closed);
    }

    private static RelayChooser Ideal() => new(Calibrations.Ideal.Stray, Calibrations.Ideal.Relays);

    private static long Total(long stray, long[] relays, uint mask)
    {
        for (var relay = 0; relay < relays.Length; relay++)
            stray += (mask >> relay & 1) * relays[relay];
        return stray;
    }
}
