using AutoSweep.Instruments.Meters;

namespace AutoSweep.Instruments.Tests.Meters;

public sealed class DriverLevelAccuracyTests
{
    private static readonly DriverLevelAccuracy Accuracy = new()
    {
        ShareOfReading = 0.0006, ShareOfRange = 0.0004, HoldsFromShareOfRange = 0.05, BelowAddShareOfRange = 0.001, Source = "34401A data sheet, from memory",
    };

    // By hand, in millivolts: 3 on the 100 mV range is under 5 %: (0.0018 + 0.04 + 0.1)/sqrt 3; 8 is above: (0.0048 + 0.04)/sqrt 3. The
    // rectangular distribution's standard deviation is its half-width over sqrt 3 (JCGM 100:2008, 4.3.7).
    [Theory]
    [InlineData(3, 0.081868)]
    [InlineData(8, 0.025865)]
    public void The_limits_make_a_rectangular_distribution_and_widen_at_the_foot_of_a_range(double millivolts, double expected) =>
        Assert.Equal(expected, Accuracy.StandardUncertaintyVolts(millivolts * 1e-3, 0.1) * 1e3, 6);
}
