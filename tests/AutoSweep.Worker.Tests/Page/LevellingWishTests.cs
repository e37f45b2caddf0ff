using AutoSweep.Core;
using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Levelling;
using AutoSweep.Worker.Page.Levels;

namespace AutoSweep.Worker.Tests.Page;

public sealed class LevellingWishTests
{
    [Fact]
    public void What_is_left_empty_is_what_the_bench_takes_for_granted()
    {
        var options = new LevellingWish().Read();

        Assert.Equal(MagnetRod.UnmeasuredGapMillimetres, options.LeastGapMillimetres);
        Assert.Empty(options.Gaps);
        Assert.Equal(new MagnetGuidanceOptions().HalfBandDecibels, options.Guidance.HalfBandDecibels);
        Assert.False(options.WithoutRecap);
        Assert.Null(options.Acknowledged);
    }

    [Fact]
    public void Leaves_are_read_with_either_decimal_mark_and_the_smaller_of_two_counts()
    {
        var options = new LevellingWish { LeastGap = "0,3", Gaps = " 61=0.45  62=0,4 61=0.40 ", Band = "0.5", WithoutRecap = true }.Read();

        Assert.Equal(0.3, options.LeastGapMillimetres);
        Assert.Equal([(61, 0.40), (62, 0.4)], options.Gaps.OrderBy(gap => gap.Key).Select(gap => (gap.Key, gap.Value)));
        Assert.Equal(0.5, options.Guidance.HalfBandDecibels);
        Assert.True(options.WithoutRecap);
    }

    [Theory]
    [InlineData("-0.1", "", "0.25")]
    [InlineData("11", "", "0.25")]
    [InlineData("", "61", "0.25")]
    [InlineData("", "61=0.4=5", "0.25")]
    [InlineData("", "x=0.4", "0.25")]
    [InlineData("", "61=11", "0.25")]
    [InlineData("", "", "0")]
    [InlineData("", "", "")]
    public void A_field_that_cannot_be_used_is_refused(string least, string gaps, string band)
    {
        var wish = new LevellingWish { LeastGap = least, Gaps = gaps, Band = band };

        Assert.Equal(BenchFault.BadFile, Assert.Throws<BenchFaultException>(wish.Read).Kind);
    }

    [Theory]
    [InlineData(false, "AB")]
    [InlineData(true, "")]
    [InlineData(true, "  ")]
    public void Without_a_tick_and_a_name_nobody_has_acknowledged_the_hazard(bool ticked, string by)
    {
        Assert.Throws<BenchFaultException>(new LevellingWish { IsUnderstood = ticked, By = by }.ReadAcknowledged);
    }

    [Fact]
    public void The_journal_is_told_who_ticked_it()
    {
        LevellingOptions options = new LevellingWish { IsUnderstood = true, By = " A. B. " }.ReadAcknowledged();

        Assert.Equal("ticked on the bench page by A. B.", options.Acknowledged);
    }
}
