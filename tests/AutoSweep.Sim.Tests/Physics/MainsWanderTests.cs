using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.Tests.Physics;

/// <summary>The mains: a mean-reverting walk of a given spread.</summary>
public class MainsWanderTests
{
    private static readonly MainsDefinition Mains = new() { Hertz = 60, WanderPercent = 0.02, WanderSeconds = 60 };

    [Fact]
    public void It_has_the_spread_and_the_memory_that_were_asked_for()
    {
        var wander = new MainsWander(Mains, 4);
        var deviations = Enumerable.Range(0, 40_000).Select(i => (wander.HertzAt(TimeSpan.FromSeconds(i)) / 60) - 1).ToList();
        var mean = deviations.Average();
        var variance = deviations.Average(d => (d - mean) * (d - mean));
        var afterMinute = deviations.Zip(deviations.Skip(60), (a, b) => (a - mean) * (b - mean)).Average() / variance;

        // 40 000 s hold some 330 independent stretches: standard errors of 4 % (sd) and 0.06 (correlation), three of each allowed.
        Assert.InRange(Math.Sqrt(variance), 0.00017, 0.00023);
        Assert.InRange(afterMinute, Math.Exp(-1) - 0.18, Math.Exp(-1) + 0.18);
    }

    [Fact]
    public void The_course_of_a_seed_does_not_depend_on_when_it_is_asked_for()
    {
        var (often, seldom) = (new MainsWander(Mains, 9), new MainsWander(Mains, 9));
        for (var i = 0; i < 1000; i++) often.HertzAt(TimeSpan.FromSeconds(i * 0.1));
        Assert.Equal(seldom.HertzAt(TimeSpan.FromSeconds(99.9)), often.HertzAt(TimeSpan.FromSeconds(99.9)));
    }

    // Trapezoids over a hundredth of the wander's own grid are as good as exact: it is drawn in straight lines.
    [Fact]
    public void Periods_are_the_frequency_added_up_over_time()
    {
        var wander = new MainsWander(new() { Hertz = 60, WanderPercent = 0.5, WanderSeconds = 20 }, seed: 3);
        const double Step = 0.005;
        var sum = Enumerable.Range(0, 20_000).Sum(index =>
            Step * (wander.HertzAt(TimeSpan.FromSeconds(index * Step)) + wander.HertzAt(TimeSpan.FromSeconds((index + 1) * Step))) / 2);
        Assert.Equal(sum, wander.PeriodsUntil(TimeSpan.FromSeconds(100)), 6);
    }
}
