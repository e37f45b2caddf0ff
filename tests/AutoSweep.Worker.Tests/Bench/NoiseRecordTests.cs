using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class NoiseRecordTests
{
    [Fact]
    public void Before_any_reading_half_a_per_cent_is_believed() => Assert.Equal(0.005, NoiseRecord.Start.RelativeSd, 12);

    [Fact]
    public void A_reading_counts_by_its_degrees_of_freedom() =>
        Assert.Equal(Math.Sqrt(((2 * 0.005 * 0.005) + (4 * 0.008 * 0.008)) / 6), NoiseRecord.Start.With(0.008, 5).RelativeSd, 12);

    [Theory]
    [InlineData(0.002)]
    [InlineData(0.01)]
    public void Many_readings_settle_on_what_they_show(double relativeSd) =>
        Assert.Equal(relativeSd, After(NoiseRecord.Start, relativeSd, readings: 200).RelativeSd, 0.02 * relativeSd);

    [Fact]
    public void A_noisier_output_is_noticed_within_its_readings_however_long_it_was_quiet()
    {
        var quiet = After(NoiseRecord.Start, 0.002, readings: 1000);

        Assert.True(After(quiet, 0.006, readings: 10).RelativeSd > 0.003);
    }

    [Fact]
    public void One_wild_reading_says_at_most_three_times_what_is_known()
    {
        var known = After(NoiseRecord.Start, 0.002, readings: 200);

        Assert.Equal(known.With(0.006, 3).RelativeSd, known.With(1.5, 3).RelativeSd, 4);
    }

    private static NoiseRecord After(NoiseRecord known, double relativeSd, int readings) =>
        Enumerable.Range(0, readings).Aggregate(known, (record, _) => record.With(relativeSd, 3));
}
