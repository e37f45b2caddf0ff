using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Sources;

namespace AutoSweep.Core.Tests.Peaks;

/// <summary>A dialled box of 1 % and three digits read by eye, on sources of the seed that the other tests use: what issue 5 promises by hand.</summary>
public class HandSweepTests
{
    private static readonly Lazy<HandOutcome[]> MeasuredAtTheEnd = new(() =>
        [.. SourceLibrary.Take(1000, seed: 20_240).AsParallel().AsOrdered().Select(source => HandRun.Of(source, BoxKnowledge.MeasuredAtTheEnd))]);

    [Fact]
    public void Half_of_the_sweeps_need_at_most_five_dialings() =>
        Assert.True(SearchScore.Quantile(0.5, MeasuredAtTheEnd.Value.Select(one => (double)one.Dialings)) <= 5);

    [Fact]
    public void Ninety_nine_in_a_hundred_lose_less_than_a_twentieth_of_a_decibel()
    {
        var lost = SearchScore.Quantile(0.99, MeasuredAtTheEnd.Value.Select(one => one.LossDecibels));

        Assert.True(lost <= 0.05, $"{lost} dB");
    }

    [Fact]
    public void About_five_in_a_hundred_lose_more_than_their_own_95_percent_bound_says()
    {
        var outside = MeasuredAtTheEnd.Value.Count(one => one.IsOutside) / (double)MeasuredAtTheEnd.Value.Length;

        Assert.True(outside <= 0.07, $"{outside}");
    }

    [Fact]
    public void Every_reading_is_at_a_setting_that_the_box_has_and_the_last_one_on_top()
    {
        foreach (var outcome in MeasuredAtTheEnd.Value.Take(200).Where(one => one.Result.Reason == PeakStopReason.BoundReached))
        {
            var trace = outcome.Result.Trace.Select(point => point.Reading.Capacitance).ToArray();
            Assert.All(trace, place => Assert.Equal(place, HandBox.OnePercent.Total(HandBox.OnePercent.Nearest(place.Picofarads))));
            Assert.True(Math.Abs(trace[^1].Picofarads - outcome.Result.Peak!.Value.Picofarads) < 0.5 * outcome.Result.HalfWidthPicofarads);
        }
    }

    [Fact]
    public void Without_a_measurement_the_boxs_tolerance_is_in_the_answers_uncertainty()
    {
        var result = Found(100_050, sd: 100, halfWidth: 10_000);

        var unmeasured = DialledPeak.Unmeasured(result, HandBox.OnePercent);

        // 1 % of 100 nF as a limit: 1000/√3 (GUM, 4.3.7), with the search's own 100 pF.
        Assert.Equal(Math.Sqrt((100.0 * 100) + (1000.0 * 1000 / 3)), unmeasured.PeakSdPicofarads, 6);
        Assert.Equal(10 * Math.Log10(1 + (1.96 * 1.96 * ((100.0 * 100) + (1000.0 * 1000 / 3)) / 1e8)), unmeasured.LossBoundDecibels, 9);
    }

    [Fact]
    public void A_measurement_moves_the_answer_by_what_the_box_was_off()
    {
        var measured = DialledPeak.Measured(Found(100_150, sd: 100, halfWidth: 10_000), dialled: new(100_050), measured: new(100_750), sdPicofarads: 50);

        Assert.Equal(new Capacitance(100_850), measured.Peak);
        Assert.Equal(Math.Sqrt((100.0 * 100) + (50.0 * 50)), measured.PeakSdPicofarads, 6);
    }

    private static PeakResult Found(long peak, double sd, double halfWidth) => new()
    {
        Reason = PeakStopReason.BoundReached, Peak = new(peak), PeakSdPicofarads = sd, HalfWidthPicofarads = halfWidth, Trace = [],
    };
}
