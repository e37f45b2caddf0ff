using System.Numerics;
using AutoSweep.Core.Calibration;

namespace AutoSweep.Core.Tests.Calibration;

/// <summary>Which sets a calibration and a check read.</summary>
public class CalibrationPlanTests
{
    [Fact]
    public void Every_relay_is_read_alone_and_the_open_fixture_again_and_again()
    {
        var sets = CalibrationPlan.Sets(16, new());
        Assert.All(Enumerable.Range(0, 16), relay => Assert.Contains(1u << relay, sets));
        Assert.Equal(0u, sets[0]);
        Assert.Equal(0u, sets[^1]);
        Assert.True(sets.Count(set => set == 0) >= 6);
    }

    [Fact]
    public void Every_relay_is_read_beside_each_other_of_its_decade() => Assert.All(
        from relay in Enumerable.Range(0, 16)
        from other in Enumerable.Range(relay / 4 * 4, 4)
        where other != relay
        select (1u << relay) | (1u << other),
        pair => Assert.Contains(pair, CalibrationPlan.Sets(16, new())));

    [Fact]
    public void A_seed_gives_the_same_plan_each_time() =>
        Assert.Equal(CalibrationPlan.Sets(16, new() { Seed = 5 }), CalibrationPlan.Sets(16, new() { Seed = 5 }));

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(32)]
    public void Any_number_of_relays_has_a_plan_of_its_own_relays_only(int relays) =>
        Assert.All(CalibrationPlan.Sets(relays, new()), set => Assert.True(BitOperations.Log2(set | 1) < relays));

    [Fact]
    public void By_hand_no_more_than_28_values_are_asked_for() => Assert.True(CalibrationPlan.Sets(16, CalibrationPlanOptions.ByHand).Count <= 28);

    [Fact]
    public void A_check_reads_each_relay_at_least_once_in_a_dozen_sets_or_fewer()
    {
        var sets = CalibrationCheck.Sets(16);
        Assert.Equal(0xFFFFu, sets.Aggregate((one, other) => one | other));
        Assert.True(sets.Count <= 12);
    }

    [Theory]
    [InlineData(100.0, true)]
    [InlineData(100.4, false)]
    public void A_check_allows_what_the_uncertainties_allow(double measured, bool holds)
    {
        var check = new CalibrationCheck(20, 0.05, [80], [0.1], new(0, 0));
        Assert.Equal(holds, check.Compare(1, [measured]).Holds);
    }
}
