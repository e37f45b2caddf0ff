using AutoSweep.Core.Quantities;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Quantities;

public class LevelTests
{
    [Theory]
    [InlineData(10, 1, 20)]
    [InlineData(1, 10, -20)]
    [InlineData(2, 1, 6.0206)] // Twice the voltage: 20 log10(2).
    [InlineData(1, 1.4142135623731, -3.0103)] // Half the power.
    public void Decibels_are_twenty_times_the_logarithm_of_the_voltage_ratio(double level, double reference, double decibels) =>
        Assert.Equal(decibels, Level.FromMillivolts(level).DecibelsAbove(Level.FromMillivolts(reference)), 0.00005);

    [Fact]
    public void A_dead_output_lies_infinitely_far_below() =>
        Assert.Equal(double.NegativeInfinity, default(Level).DecibelsAbove(Level.FromMillivolts(5)));

    [Fact]
    public void Millivolts_and_volts_agree()
    {
        Assert.Equal(0.005372, Level.FromMillivolts(5.372).Volts, 1e-15);
        Assert.Equal(5.372, new Level(0.005372).Millivolts, 1e-12);
    }

    [Fact]
    public void Levels_compare_by_voltage()
    {
        var (soft, loud) = (Level.FromMillivolts(3.2), Level.FromMillivolts(8));
        Assert.True(soft < loud && loud > soft && soft <= loud && loud >= soft && soft.CompareTo(loud) < 0);
    }

    [Fact]
    public void It_is_written_with_a_point_whatever_the_culture()
    {
        using var comma = Culture.DecimalComma();
        Assert.Equal("5.372 mV", Level.FromMillivolts(5.372).ToString());
    }
}
