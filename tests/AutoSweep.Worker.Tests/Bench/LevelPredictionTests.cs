using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class LevelPredictionTests
{
    // One half-width off costs half the power, 3.01 dB, by the definition of the half-power half-width.
    [Fact]
    public void A_part_one_half_width_off_is_predicted_half_a_power_down()
    {
        var prediction = LevelPrediction.Of(Job(offPicofarads: 8_000), 9)!;

        Assert.Equal(5.372 / Math.Sqrt(2), prediction.Millivolts, 6);
    }

    // Q 13.6387 with parts of D 0.005: 1 + 0.0682 less level, as 1/Q adds to D.
    [Fact]
    public void Parts_with_losses_are_predicted_to_damp_the_peak()
    {
        var prediction = LevelPrediction.Of(Job(offPicofarads: 0, dissipation: 0.005), 9)!;

        Assert.Equal(5.372 / (1 + (13.6387 * 0.005)), prediction.Millivolts, 6);
    }

    // Between 0 and 0.008 nothing is known: the middle, 0.004, damps Q 13.6387 by 1.0546, and 0.004/√3 of it is the standard uncertainty (GUM, 4.3.7).
    [Theory]
    [InlineData(0.0003, true)]
    [InlineData(0.004, true)]
    [InlineData(0.0075, true)]
    [InlineData(0.02, false)]
    public void Parts_whose_losses_nobody_measured_are_predicted_for_the_middle_of_what_films_have_and_no_film_is_flagged(double real, bool isExplained)
    {
        var prediction = LevelPrediction.Of(Job(offPicofarads: 0, dissipation: null), 9)!;

        Assert.Equal(5.372 / 1.0545548, prediction.Millivolts, 5);
        Assert.Equal(Math.Sqrt((0.01 * 0.01) + Math.Pow(13.6387 * 0.004 / Math.Sqrt(3) / 1.0545548, 2)), prediction.RelativeSd, 6);
        var read = 5.372 / (1 + (13.6387 * real));
        Assert.Equal(isExplained, prediction.Compare(9, 740, new(new(read / 1000), new(0), 0.002, 3, true)).IsExplained);
    }

    [Theory]
    [InlineData(5.372, true)]
    [InlineData(5.42, true)]
    [InlineData(4.8, false)]
    [InlineData(6.0, false)]
    [InlineData(0.0, false)]
    public void A_difference_is_explained_by_noise_and_slow_change_or_flagged(double millivolts, bool isExplained)
    {
        var prediction = LevelPrediction.Of(Job(offPicofarads: 0), 9)!;

        var seen = prediction.Compare(9, 740, new(new(millivolts / 1000), new(0), 0.002, 3, true));

        Assert.Equal(isExplained, seen.IsExplained);
        // Two noises and one per cent of slow change in quadrature; a per cent of level is 0.0869 dB.
        Assert.Equal(0.0869 * Math.Sqrt(1 + 0.04), seen.StandardUncertaintyDecibels, 0.0005);
    }

    [Fact]
    public void Hum_that_the_sweep_found_is_taken_out_of_the_reading()
    {
        var prediction = LevelPrediction.Of(Job(offPicofarads: 0, humMillivolts: 3), 9)!;

        var seen = prediction.Compare(9, 740, new(new(0.005), new(0), 0.002, 3, true));

        Assert.Equal(4, seen.Millivolts, 9);
    }

    [Fact]
    public void Without_a_fitting_there_is_no_prediction()
    {
        Assert.Null(LevelPrediction.Of(Job(offPicofarads: 0), 10));
    }

    private static JobState Job(long offPicofarads, double humMillivolts = 0, double? dissipation = 0)
    {
        var nominal = Some.Profile.ToneOf(Some.Profile.Outputs[8]).Hertz;
        JournalEvent[] events =
        [
            new JobOpened("test", Some.Profile),
            new StageStarted(JobStage.Sweep, [9, 10]),
            Some.Swept(9) with { ToneHertz = nominal, PeakPicofarads = 100_000, HalfWidthPicofarads = 8_000, HumMillivolts = humMillivolts, Law = ResponseLaw.Shunt },
            new OutputFitted
            {
                Output = 9,
                Parts = ["A"],
                MeasuredPicofarads = 100_000 + offPicofarads,
                StandardUncertaintyPicofarads = 30,
                Dissipation = dissipation,
                WantedPicofarads = 100_000,
                LossDecibels = 0.001,
                LedgerSequence = 2,
            },
        ];
        return events.Select((what, index) => new JournalEntry(index + 1, default, what)).Aggregate(JobState.Empty, (state, entry) => state.Apply(entry));
    }
}
