using AutoSweep.Core.Generator;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Tests.Peaks.Support;
using AutoSweep.Sources;

namespace AutoSweep.Core.Tests.Peaks;

public class PeakSearchConversationTests
{
    private static readonly PeakSearchOptions Options = new() { Smallest = new(100), Largest = new(1_000_000) };
    private static readonly PeakPrior Prior = new() { Expected = Capacitance.FromNanofarads(105) };

    [Fact]
    public void The_first_reading_is_asked_for_at_the_expected_capacitance() =>
        Assert.Equal(new PeakStep.Read(Prior.Expected), new PeakSearch(Prior, Options).Next());

    [Fact]
    public void Asking_twice_gives_the_same_step()
    {
        var search = new PeakSearch(Prior, Options);
        Tell(search, 105);
        Assert.Same(search.Next(), search.Next());
    }

    [Fact]
    public void An_unsettled_reading_is_asked_for_again_at_the_same_place()
    {
        var search = new PeakSearch(Prior, Options);
        Tell(search, 105);
        Tell(search, 140, settled: false);
        Assert.Equal(Capacitance.FromNanofarads(140), Assert.IsType<PeakStep.Read>(search.Next()).Capacitance);
    }

    [Fact]
    public void The_same_readings_give_the_same_answer_bit_for_bit()
    {
        var source = SourceLibrary.Take(1, seed: 5)[0];
        var (first, second) = (SearchRun.Of(source), SearchRun.Of(source));
        Assert.Equal(first with { Trace = [] }, second with { Trace = [] });
        Assert.Equal(first.Trace, second.Trace);
    }

    [Fact]
    public void There_is_a_live_picture_from_the_third_reading_on()
    {
        var search = new PeakSearch(Prior, Options);
        Tell(search, 105);
        Tell(search, 140);
        Assert.Null(search.Current);
        Tell(search, 118);
        var fit = Assert.IsType<PeakFit>(search.Current);
        Assert.InRange(fit.Curve.LevelAt(Capacitance.FromNanofarads(118)).Millivolts / (Tuned.Series(118, 120, 10) * 1e3), 0.98, 1.02);
    }

    [Fact]
    public void A_reading_after_the_end_is_refused()
    {
        var search = new PeakSearch(Prior, Options with { Budget = 1 });
        Tell(search, 105);
        Assert.IsType<PeakStep.Done>(search.Next());
        Assert.Throws<InvalidOperationException>(() => Tell(search, 105));
    }

    [Theory]
    [InlineData(double.NaN, 0.01)]
    [InlineData(-1, 0.01)]
    [InlineData(1, -0.01)]
    [InlineData(1, double.NaN)]
    public void A_reading_that_cannot_be_is_refused(double volts, double noise) =>
        Assert.Throws<ArgumentException>(() => new PeakSearch(Prior, Options).Tell(new(new(1000), new(volts), noise, TimeSpan.Zero)));

    [Fact]
    public void No_level_at_all_is_a_reading_whatever_noise_is_told()
    {
        var search = new PeakSearch(Prior, Options);
        search.Tell(new(new(1000), new(0), double.NaN, TimeSpan.Zero));
        Assert.IsType<PeakStep.Read>(search.Next());
    }

    [Fact]
    public void Samples_that_happen_to_be_equal_are_a_reading_without_noise()
    {
        var search = new PeakSearch(Prior, Options);
        search.Tell(new(new(1000), new(1e-3), 0, TimeSpan.Zero));
        Assert.IsType<PeakStep.Read>(search.Next());
    }

    [Fact]
    public void An_empty_range_is_refused() =>
        Assert.Throws<ArgumentException>(() => new PeakSearch(Prior, Options with { Largest = Options.Smallest }));

    [Fact]
    public void The_answer_names_the_law_and_its_evidence()
    {
        var series = new NamedProblem { Name = "series", Volts = (c, _) => Tuned.Series(c, 120, 6) }.Search();
        var shunt = new NamedProblem { Name = "shunt", Volts = (c, _) => Tuned.Shunt(c, 120, 6) }.Search();
        Assert.Equal(ResponseLaw.Series, series.Law);
        Assert.Equal(ResponseLaw.Shunt, shunt.Law);
        Assert.True(series.LogOddsSeriesOverShunt > 3 && shunt.LogOddsSeriesOverShunt < -3);
    }

    [Fact]
    public void The_answer_gives_level_q_and_half_width()
    {
        var result = new NamedProblem { Name = "series", Volts = (c, _) => Tuned.Series(c, 120, 6) }.Search();
        Assert.InRange(result.LevelAtPeak!.Value.Millivolts, 4.9, 5.1);
        Assert.InRange(result.Q, 5.7, 6.3);
        // Half-power at 1/(1 ± 1/Q): half the distance is Q/(Q² − 1) of the peak (worked out in docs/peak-search.md).
        Assert.InRange(result.HalfWidthPicofarads / 120_000, 0.95 * 6 / 35, 1.05 * 6 / 35);
    }

    private static void Tell(PeakSearch search, double nanofarads, bool settled = true) => search.Tell(new(
        Capacitance.FromNanofarads(nanofarads), new(Tuned.Series(nanofarads, 120, 10)), 0.003, TimeSpan.FromSeconds(2), settled));
}
