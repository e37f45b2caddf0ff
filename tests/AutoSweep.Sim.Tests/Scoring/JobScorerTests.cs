using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Scoring;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Scoring;

/// <summary>A job against the truth.</summary>
public class JobScorerTests
{
    private static readonly BenchDefinition Bench = TestBench.Small();
    private readonly JobScorer scorer = new(Bench, TestBench.Profile);

    [Fact]
    public void A_job_that_finds_every_peak_is_good()
    {
        var score = scorer.Score(Perfect(), null);
        Assert.True(score.Good);
        Assert.Equal(6, score.Outputs.Count);
        Assert.InRange(score.WorstLossDecibels, -1e-9, 1e-6);
        Assert.Equal(5, score.MedianReadings);
    }

    [Fact]
    public void An_error_is_told_in_half_widths_and_in_decibels_lost()
    {
        var rows = Perfect();
        var peak = Truths().First().Peak!;
        rows[0] = rows[0] with { PeakPicofarads = peak.Picofarads + peak.HalfWidthPicofarads };
        var output = scorer.Score(rows, null).Outputs[0];
        Assert.False(output.Good);
        Assert.Equal(1, output.ErrorInHalfWidths, 1e-9);

        // One half-width costs about 3 dB; the flanks of a series filter are unequal.
        Assert.InRange(output.LossDecibels, 2.5, 3.5);
    }

    [Theory]
    [InlineData(0.049, true)]
    [InlineData(0.051, false)]
    [InlineData(-0.051, false)]
    public void The_limit_is_a_twentieth_of_a_half_width(double error, bool good)
    {
        var rows = Perfect();
        var peak = Truths().First().Peak!;
        rows[0] = rows[0] with { PeakPicofarads = peak.Picofarads + (error * peak.HalfWidthPicofarads) };
        Assert.Equal(good, scorer.Score(rows, null).Good);
    }

    [Fact]
    public void A_missing_a_double_and_an_unplanned_output_are_not_good()
    {
        Assert.False(scorer.Score([.. Perfect().Skip(1)], null).Good);
        Assert.False(scorer.Score([.. Perfect(), Perfect()[0]], null).Good);
        var unplanned = scorer.Score([.. Perfect(), Perfect()[0] with { Output = 1 }], null);
        Assert.False(unplanned.Good);
        Assert.Equal([1], unplanned.NotPlanned);
    }

    [Fact]
    public void A_peak_that_was_not_found_is_not_good()
    {
        var rows = Perfect();
        rows[0] = rows[0] with { PeakPicofarads = double.NaN };
        Assert.False(scorer.Score(rows, null).Good);
    }

    [Fact]
    public void Flags_are_held_against_planted_faults()
    {
        var faults = new List<PlantedFault>
        {
            new() { Output = 2, Kind = FaultKind.HumOnly },
            new() { Output = 3, Kind = FaultKind.Swapped, Partner = 4 },
        };
        var bench = Bench with { Faults = faults, Truth = Bench.Truth with { Faults = faults } };
        var survey = new List<SurveyRow>
        {
            new(1, 0, 0, "unsteady"), new(2, 0, 0, "hum only"), new(3, 0, 0, "wrong-tone"), new(4, 0, 0, ""),
        };
        var score = new JobScorer(bench, TestBench.Profile).Score(Perfect(), survey);
        Assert.Equal(
            [(1, "", false), (2, "HumOnly", true), (3, "Swapped", true), (4, "Swapped", false)],
            score.Flags.Select(flag => (flag.Output, flag.Planted, flag.Found)));
        Assert.Equal(4, score.Surveyed);
    }

    private static IEnumerable<OutputTruth> Truths() => Bench.Truth.Outputs.Where(output => output.Peak is not null);

    private static List<SweepRow> Perfect() =>
        [.. Truths().Select(truth => new SweepRow(truth.Output, truth.Peak!.Picofarads, 0, 5, "bound reached"))];
}
