using AutoSweep.Sources;

namespace AutoSweep.Core.Tests.Peaks;

/// <summary>A real bench knows its noise only from a few samples a reading: with three, the told figure is often half or twice the true one.</summary>
public class EstimatedNoiseTests
{
    private static readonly SearchScore Score =
        SearchScore.Of([.. SourceLibrary.Take(1500, seed: 303).Select(source => source with { NoiseSamples = 3 })]);

    [Fact]
    public void The_level_lost_stays_under_a_hundredth_of_a_decibel_in_99_of_100() =>
        Assert.True(Score.LossQuantile(0.99, SourceFamily.Series, SourceFamily.Shunt) < 0.01);

    [Fact]
    public void The_truth_is_outside_the_stated_99_percent_interval_at_most_twice_in_a_hundred() =>
        Assert.True(Score.ShareOutside <= 0.02, $"{Score.ShareOutside}");
}
