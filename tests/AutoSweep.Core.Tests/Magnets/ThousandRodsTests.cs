using AutoSweep.Core.Magnets;
using AutoSweep.Sources.Magnets;
using Xunit.Abstractions;

namespace AutoSweep.Core.Tests.Magnets;

/// <summary>A thousand rods of one seed, slope up to three times off the expected one, 3 % wobble, play, locking shift, a hand that is 20 % off: what issue
/// 4 promises.</summary>
/// <remarks>"Reachable": a rod whose target leaves 0.05 mm at the highest tooth. One that is not brought into its band counts as infinitely many
/// moves.</remarks>
public sealed class ThousandRodsTests(ITestOutputHelper output)
{
    private static readonly IReadOnlyList<RodTruth> Rods = RodLibrary.Take(1_000, seed: 4_711);
    private static readonly MagnetGuidanceOptions Options = new();
    private static readonly Lazy<RodScore> Guided = new(() => RodScore.Guided(Rods, new(), Options));

    [Fact]
    public void Half_of_the_reachable_rods_are_inside_half_a_decibel_after_three_moves() =>
        Assert.True(Guided.Value.MedianMoves(Guided.Value.Reachable) <= 3, Words(Guided.Value));

    [Fact]
    public void Nine_of_ten_reachable_rods_are_brought_into_their_band() =>
        Assert.True(RodScore.Share(Guided.Value.Reachable, GuidanceEnding.InBand) > 0.9, Words(Guided.Value));

    [Fact]
    public void No_wheel_is_ever_touched_with_a_leaf_put_in_or_without() =>
        Assert.Equal((0, 0), (Guided.Value.Contacts, RodScore.Guided(Rods, new(), Options, withLeaf: false).Contacts));

    [Fact]
    public void No_wheel_is_touched_by_a_hand_that_is_twice_as_far_off_or_a_lock_that_shifts_five_times_as_much()
    {
        Assert.Equal(0, RodScore.Guided(Rods, new() { Share = 0.4 }, Options).Contacts);
        Assert.Equal(0, RodScore.Guided(Rods, new() { LockingSd = 0.01 }, Options).Contacts);
    }

    [Theory]
    [InlineData(0.005)]
    [InlineData(0.02)]
    [InlineData(0.05)]
    public void Fixed_small_steps_take_more_moves_and_touch_wheels(double step)
    {
        var hands = RodScore.FixedSteps(Rods, new(), Options, step);
        output.WriteLine($"guided: {Words(Guided.Value)}");
        output.WriteLine($"fixed steps of {step} mm: {Words(hands)}");

        Assert.True(hands.MedianMoves(hands.Reachable) > Guided.Value.MedianMoves(Guided.Value.Reachable));
        Assert.True(hands.Contacts > 0);
    }

    [Fact]
    public void A_stuck_rod_is_told_as_one_and_never_ends_in_the_band()
    {
        var stuck = RodScore.Guided([.. Rods.Take(100).Select(rod => rod with { IsStuck = true, StartDecibels = Math.Abs(rod.StartDecibels) })], new(),
            Options);

        Assert.DoesNotContain(stuck.Runs, run => run.Ending == GuidanceEnding.InBand);
        Assert.True(RodScore.Share(stuck.Runs, GuidanceEnding.NoEffect) > 0.8, Words(stuck));
    }

    private static string Words(RodScore score) =>
        $"median {score.MedianMoves(score.Reachable)} moves, {score.Contacts} contacts, in band {RodScore.Share(score.Reachable, GuidanceEnding.InBand):P1}, "
        + $"refused {RodScore.Share(score.Reachable, GuidanceEnding.NearContact):P1} of {score.Reachable.Count} reachable; endings "
        + string.Join(", ", score.Runs.GroupBy(run => run.Ending).Select(ending => $"{ending.Key} {ending.Count()}"));
}
