using AutoSweep.Sources;

namespace AutoSweep.Core.Tests.Peaks;

/// <summary>How near the search comes to what any unbiased method can do.</summary>
/// <remarks>
/// Cramér (1946) and Rao (1945): with N readings of relative noise s at the places of steepest slope, one half-width to either side, where
/// the relative slope is 1/(2·half-width), no unbiased estimate's standard deviation is under 2·s·half-width/√N. The bound knows level, Q,
/// law and hum; the search has to find them from the same readings.
/// </remarks>
public class CramerRaoTests
{
    private static readonly SearchScore Score =
        SearchScore.Of([.. SourceLibrary.Take(1200, seed: 77).Where(source => source.Family <= SourceFamily.Shunt)]);

    [Fact]
    public void The_root_mean_square_error_is_within_two_and_a_half_times_the_bound() =>
        Assert.InRange(Score.ErrorOverCramerRaoBound, 0.9, 2.5);

    // Of a normal distribution half of the errors are under 0.67 standard deviations.
    [Fact]
    public void Half_of_the_errors_are_under_the_bounds_standard_deviation() =>
        Assert.InRange(SearchScore.Quantile(0.5, Score.Outcomes.Select(outcome => outcome.ErrorOverCramerRaoBound)), 0.5, 1);
}
