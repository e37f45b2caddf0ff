using AutoSweep.Core.Quantities;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Quantities;

public class FrequencyTests
{
    [Theory]
    [InlineData(880, 440, 1200)]
    [InlineData(440, 880, -1200)]
    [InlineData(440, 440, 0)]
    [InlineData(3, 2, 701.955)] // The pure fifth: 1200 log2(3/2), any book on tuning.
    [InlineData(5, 6, -315.641)] // The pure minor third, downwards.
    public void Cents_are_hundredths_of_an_equal_tempered_semitone(double hertz, double reference, double cents) =>
        Assert.Equal(cents, new Frequency(hertz).CentsAbove(new(reference)), 0.0005);

    [Fact]
    public void Cents_of_or_above_nothing_are_not_finite()
    {
        Assert.Equal(double.NegativeInfinity, default(Frequency).CentsAbove(new(440)));
        Assert.Equal(double.PositiveInfinity, new Frequency(440).CentsAbove(default));
    }

    [Fact]
    public void The_angular_frequency_is_two_pi_times_the_frequency() => Assert.Equal(6.283185307179586, new Frequency(1).RadiansPerSecond);

    [Fact]
    public void Frequencies_compare_by_pitch()
    {
        var (low, high) = (new Frequency(32.7), new Frequency(5924.6));
        Assert.True(low < high && high > low && low <= high && high >= low && low.CompareTo(high) < 0);
    }

    [Fact]
    public void It_is_written_with_a_point_whatever_the_culture()
    {
        using var comma = Culture.DecimalComma();
        Assert.Equal("523.08 Hz", new Frequency(523.0769).ToString());
    }
}
