using AutoSweep.Core.Quantities;
using AutoSweep.Core.Tests.Support;
using FsCheck.Xunit;

namespace AutoSweep.Core.Tests.Quantities;

public class CapacitanceTests
{
    [Theory]
    [InlineData(104.4999, 104)]
    [InlineData(104.5, 105)]
    [InlineData(-104.5, -105)]
    [InlineData(0.4, 0)]
    public void A_fraction_of_a_picofarad_is_rounded_to_the_nearest_half_away_from_zero(double picofarads, long expected) =>
        Assert.Equal(expected, Capacitance.FromPicofarads(picofarads).Picofarads);

    [Fact]
    public void The_units_agree()
    {
        var classic = new Capacitance(105_000);
        Assert.Equal(classic, Capacitance.FromNanofarads(105));
        Assert.Equal(classic, Capacitance.FromFarads(0.105e-6));
        Assert.Equal((105.0, 105e-9), (classic.Nanofarads, classic.Farads));
        Assert.Equal(Capacitance.Zero, default);
    }

    [Property]
    public bool Farads_and_back_lose_no_picofarad_up_to_a_millifarad(int picofarads) =>
        Capacitance.FromFarads(new Capacitance(picofarads).Farads).Picofarads == picofarads;

    // The reason for whole picofarads: with doubles 0.1 + 0.2 is not 0.3, and two ways to the same relays would differ.
    [Property]
    public bool A_sum_is_the_same_in_any_order(int[] picofarads)
    {
        var parts = picofarads.Select(value => new Capacitance(value)).ToList();
        var forwards = parts.Aggregate(Capacitance.Zero, (sum, part) => sum + part);
        var backwards = Enumerable.Reverse(parts).Aggregate(Capacitance.Zero, (sum, part) => sum + part);
        return forwards == backwards && forwards.Picofarads == picofarads.Sum(value => (long)value)
            && forwards - backwards == Capacitance.Zero;
    }

    [Property]
    public bool Capacitances_are_ordered_as_their_picofarads(int left, int right)
    {
        var (a, b) = (new Capacitance(left), new Capacitance(right));
        return (a < b) == (left < right) && (a > b) == (left > right) && (a <= b) == (left <= right) && (a >= b) == (left >= right)
            && Math.Sign(a.CompareTo(b)) == left.CompareTo(right);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e19)]
    [InlineData(-1e19)]
    public void A_value_beyond_the_range_is_an_overflow_and_never_a_wrong_number(double picofarads) =>
        Assert.Throws<OverflowException>(() => Capacitance.FromPicofarads(picofarads));

    [Fact]
    public void A_sum_beyond_the_range_is_an_overflow()
    {
        var most = new Capacitance(long.MaxValue);
        Assert.Throws<OverflowException>(() => most + new Capacitance(1));
        Assert.Throws<OverflowException>(() => Capacitance.Zero - most - new Capacitance(2));
    }

    [Theory]
    [InlineData(0, "0 pF")]
    [InlineData(820, "820 pF")]
    [InlineData(-820, "-820 pF")]
    [InlineData(1_000, "1.00 nF")]
    [InlineData(104_567, "104.57 nF")]
    [InlineData(9_999_900, "9999.90 nF")]
    public void It_is_written_as_a_technician_writes_it_whatever_the_culture(long picofarads, string expected)
    {
        using var comma = Culture.DecimalComma();
        Assert.Equal(expected, new Capacitance(picofarads).ToString());
    }
}
