using AutoSweep.Core.Curve;
using AutoSweep.Core.Magnets;

namespace AutoSweep.Core.Tests.Magnets;

public sealed class MagnetWorkOrderTests
{
    private static readonly CurveComparison Comparison = new(0.5,
    [
        One(1, 0.4, CurveVerdict.Within), One(2, 3, CurveVerdict.TooLoud), One(3, -3, CurveVerdict.TooSoft), One(4, 1.4, CurveVerdict.TooLoud),
        One(5, 8, CurveVerdict.TooLoud), One(6, -9, CurveVerdict.TooSoft), One(7, null, CurveVerdict.NotCompared),
    ]);

    [Fact]
    public void Only_outputs_outside_their_tolerance_are_worked_on_and_the_most_gain_for_the_least_handling_comes_first()
    {
        var order = MagnetWorkOrder.Of(Comparison, new Dictionary<int, string>(), new());

        Assert.Equal([5, 6, 2, 3, 4], order.Works.Select(work => work.Output));
        Assert.Empty(order.LeftOut);
    }

    [Fact]
    public void A_rod_that_goes_out_comes_before_one_that_is_as_far_off_and_goes_in()
    {
        var works = MagnetWorkOrder.Of(Comparison, new Dictionary<int, string>(), new()).Works;

        Assert.True(works.Single(work => work.Output == 2).Worth > works.Single(work => work.Output == 3).Worth);
        Assert.Equal(MoveDirection.In, works.Single(work => work.Output == 3).Direction);
    }

    [Fact]
    public void What_is_no_magnets_business_is_left_out_and_says_why()
    {
        var order = MagnetWorkOrder.Of(Comparison, new Dictionary<int, string> { [5] = "its level does not stand still", [1] = "of no matter" }, new());

        Assert.Equal([6, 2, 3, 4], order.Works.Select(work => work.Output));
        Assert.Equal([new(5, "its level does not stand still")], order.LeftOut);
    }

    private static CurveDeviation One(int output, double? decibels, CurveVerdict verdict) => new(output, 5, 5, decibels, 0.2, 1, verdict);
}
