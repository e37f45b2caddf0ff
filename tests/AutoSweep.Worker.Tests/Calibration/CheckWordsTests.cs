using AutoSweep.Core.Calibration;
using AutoSweep.Worker.Calibration;

namespace AutoSweep.Worker.Tests.Calibration;

public sealed class CheckWordsTests
{
    [Fact]
    public void A_calibration_that_holds_is_said_to_hold() =>
        Assert.Contains("still holds", CheckWords.Of([Point(0, 233.5, 233.6, 1), Point(1, 334, 334.5, 1)]), StringComparison.Ordinal);

    [Fact]
    public void One_difference_everywhere_is_the_stray() =>
        Assert.Contains("stray has moved by +20.0 pF", CheckWords.Of([Point(0, 230, 250, 1), Point(1, 334, 354.2, 1)]), StringComparison.Ordinal);

    [Fact]
    public void Where_a_set_is_off_its_relays_are_named()
    {
        var words = CheckWords.Of([Point(0, 230, 230, 1), Point(0b1100, 5000, 5100, 5)]);
        Assert.Contains("no longer holds at 1 of 2", words, StringComparison.Ordinal);
        Assert.Contains("relays 3, 4: +100.0 pF", words, StringComparison.Ordinal);
    }

    private static CheckedPoint Point(uint closed, double expected, double measured, double limit) => new(closed, expected, measured, limit);
}
