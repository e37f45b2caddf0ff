using AutoSweep.Core.Magnets;

namespace AutoSweep.Core.Tests.Magnets;

public sealed class MagnetGuidanceTests
{
    private static readonly MagnetGuidanceOptions Options = new();
    private static readonly MagnetRod Rod = new(64, 0.5);

    [Fact]
    public void It_begins_with_a_reading_and_asks_the_same_until_it_is_told()
    {
        var guidance = new MagnetGuidance(Rod, Options);

        Assert.IsType<GuidanceStep.Read>(guidance.Next());
        Assert.Same(guidance.Next(), guidance.Next());
    }

    [Theory]
    [InlineData(3)]
    [InlineData(-3)]
    public void The_first_move_is_out_whichever_way_the_level_is_off(double decibels)
    {
        var move = Assert.IsType<GuidanceStep.Move>(After(decibels).Next());

        Assert.Equal(MoveDirection.Out, move.Order.Direction);
        Assert.True(move.Order.OvershootMillimetres > 0);
        Assert.Null(move.TimesLast);
    }

    [Fact]
    public void A_level_in_the_band_ends_it() => Assert.Equal(GuidanceEnding.InBand, Ending(After(0.2)));

    [Fact]
    public void A_first_move_teaches_the_slope_and_the_next_is_what_is_left()
    {
        var guidance = After(4);
        var first = Assert.IsType<GuidanceStep.Move>(guidance.Next()).Order;
        guidance.Tell(new(1, 0.02, first));

        var second = Assert.IsType<GuidanceStep.Move>(guidance.Next());

        Assert.Equal(3 / first.Millimetres, guidance.Slope.Median, 0.15 * 3 / first.Millimetres);
        Assert.Equal(first.Millimetres / 3, second.Order.Millimetres, 0.1 * first.Millimetres);
        Assert.Equal(second.Order.Millimetres / first.Millimetres, second.TimesLast!.Value, 6);
    }

    [Fact]
    public void A_rod_that_went_too_far_out_comes_back_straight()
    {
        var guidance = After(4);
        guidance.Tell(new(-1.5, 0.02, Order(guidance)));

        var back = Order(guidance);

        Assert.Equal(MoveDirection.In, back.Direction);
        Assert.Equal(0, back.OvershootMillimetres);
    }

    [Fact]
    public void A_band_that_lies_beyond_the_known_gap_is_refused_before_anything_is_touched() =>
        Assert.Equal(GuidanceEnding.NearContact, Ending(After(-6, new(8, 0.1))));

    [Fact]
    public void A_thicker_leaf_allows_what_a_thin_one_refuses() =>
        Assert.IsType<GuidanceStep.Move>(After(-6, new(8, 2)).Next());

    [Fact]
    public void No_move_in_uses_more_than_half_of_the_gap_that_is_known_whatever_the_hand_does()
    {
        var guidance = After(-6, new(16, 0.6));
        var depth = -1 / 8.0; // 1 dB softer at 8 dB a millimetre
        guidance.Tell(new(-7, 0.02, Order(guidance)));
        while (guidance.Next() is GuidanceStep.Move { Order.Direction: MoveDirection.In } move && guidance.Moves < 8)
        {
            var worst = (1.6 * move.Order.Millimetres) + (3 * Options.LockingMillimetres);
            Assert.True(depth + worst <= (Math.Max(0, depth) / 2) + 0.3 + 1e-9, $"{move.Order} at {depth}");
            depth += move.Order.Millimetres;
            guidance.Tell(new(guidance.Current!.Decibels + (8 * move.Order.Millimetres), 0.02, move.Order));
        }
    }

    [Fact]
    public void A_move_that_is_not_heard_is_followed_by_a_longer_one_out_and_then_by_the_end()
    {
        var guidance = After(5);
        var first = Order(guidance);
        guidance.Tell(new(5.01, 0.02, first));
        var second = Order(guidance);
        guidance.Tell(new(4.99, 0.02, second));

        Assert.Equal((MoveDirection.Out, 2.0), (second.Direction, second.Millimetres / first.Millimetres));
        Assert.Equal(GuidanceEnding.NoEffect, Ending(guidance));
    }

    [Fact]
    public void A_stuck_rod_that_should_go_in_is_never_pushed_harder()
    {
        var guidance = After(-3);
        guidance.Tell(new(-3, 0.02, Order(guidance)));

        Assert.Equal(MoveDirection.Out, Order(guidance).Direction);
    }

    [Fact]
    public void A_level_that_goes_the_wrong_way_ends_it_at_once()
    {
        var guidance = After(3);
        guidance.Tell(new(5, 0.02, Order(guidance)));

        Assert.Equal(GuidanceEnding.WrongWay, Ending(guidance));
    }

    [Fact]
    public void A_level_that_does_not_stand_still_is_read_again_and_then_given_up()
    {
        var guidance = new MagnetGuidance(Rod, Options);
        for (var again = 0; again <= Options.Repeats; again++)
        {
            Assert.IsType<GuidanceStep.Read>(guidance.Next());
            guidance.Tell(new(3, 0.4));
        }

        Assert.Equal(GuidanceEnding.Unsteady, Ending(guidance));
    }

    [Fact]
    public void The_budget_ends_it_with_the_best_that_was()
    {
        var guidance = After(3);
        for (var sign = -1; guidance.Next() is GuidanceStep.Move move; sign = -sign)
            guidance.Tell(new(guidance.Moves == 3 ? 0.4 : sign * 0.6, 0.02, move.Order));

        var result = Assert.IsType<GuidanceStep.Done>(guidance.Next()).Result;
        Assert.Equal((GuidanceEnding.BudgetSpent, Options.Budget, 0.4), (result.Ending, result.Moves, result.BestDecibels));
    }

    [Fact]
    public void Reading_a_journal_again_gives_the_same_next_move_and_without_its_last_reading_the_one_before()
    {
        var guidance = After(5);
        var first = guidance.Next();
        guidance.Tell(new(2, 0.02, Order(guidance)));
        var trace = new[] { new MagnetReading(5, 0.02), guidance.Current! };

        Assert.Equal(guidance.Next(), MagnetGuidance.Replay(Rod, Options, trace).Next());
        Assert.Equal(first, MagnetGuidance.Replay(Rod, Options, trace[..1]).Next());
    }

    [Theory]
    [InlineData(double.NaN, 0.1)]
    [InlineData(1, 0)]
    public void A_reading_that_is_none_is_refused(double decibels, double sd) =>
        Assert.Throws<ArgumentException>(() => new MagnetGuidance(Rod, Options).Tell(new(decibels, sd)));

    private static MagnetGuidance After(double decibels, MagnetRod? rod = null) =>
        MagnetGuidance.Replay(rod ?? Rod, Options, [new(decibels, 0.02)]);

    private static MagnetMove Order(MagnetGuidance guidance) => Assert.IsType<GuidanceStep.Move>(guidance.Next()).Order;

    private static GuidanceEnding Ending(MagnetGuidance guidance) => Assert.IsType<GuidanceStep.Done>(guidance.Next()).Result.Ending;
}
