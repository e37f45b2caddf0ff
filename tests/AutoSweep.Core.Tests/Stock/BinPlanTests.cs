using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Tests.Stock;

public sealed class BinPlanTests
{
    [Fact]
    public void A_part_at_a_cut_point_goes_into_the_bin_above()
    {
        var plan = new BinPlan([4_700, 100_000]);

        Assert.Equal(["B01", "B02", "B02", "B03"], new long[] { 4_699, 4_700, 99_999, 100_000 }.Select(plan.BinOf));
        Assert.Equal([("B01", "below 4.70 nF"), ("B02", "from 4.70 nF below 100.00 nF"), ("B03", "from 100.00 nF")], plan.Labels());
    }

    [Fact]
    public void Bins_for_the_stock_at_hand_hold_about_as_many_parts_as_asked()
    {
        var random = new Random(7);
        long[] stock = [.. Enumerable.Range(0, 300).Select(_ => (long)random.Next(90_000, 110_000))];

        var plan = BinPlan.For(stock, 25);

        var counts = stock.GroupBy(plan.BinOf).Select(bin => bin.Count()).ToList();
        Assert.InRange(counts.Count, 10, 12);
        Assert.InRange(counts.Max(), 25, 40);
    }

    [Fact]
    public void A_cut_falls_into_the_gap_between_two_heaps_at_a_round_value()
    {
        long[] stock = [.. Enumerable.Range(0, 20).Select(index => 46_500L + (50 * index)),
            .. Enumerable.Range(0, 24).Select(index => 99_000L + (80 * index))];

        Assert.Equal([90_000], BinPlan.For(stock, 25).CutsPicofarads);
    }

    [Fact]
    public void A_small_stock_is_one_bin() => Assert.Empty(BinPlan.For([1, 2, 3]).CutsPicofarads);

    [Fact]
    public void Parts_of_equal_value_never_part() => Assert.All(BinPlan.For(Enumerable.Repeat(100_000L, 100)).CutsPicofarads, cut =>
        Assert.Equal(100_000, cut));
}
