using AutoSweep.Core.Journal;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Journal;

public sealed class JobStateTests
{
    private static readonly JournalEvent[] Begun = [new JobOpened("AutoSweep", Some.Profile), new StageStarted(JobStage.Sweep, [9, 10, 11])];

    [Fact]
    public void Outputs_without_a_result_are_missing_in_ascending_number()
    {
        var state = Some.Fold([.. Begun, Some.Swept(10)]);

        Assert.Equal([9, 11], state.Missing(JobStage.Sweep));
    }

    [Fact]
    public void Readings_belong_to_the_output_in_hand_and_go_with_its_result()
    {
        var state = Some.Fold([.. Begun, Recognised(10), Some.Read(10, 90_000), Some.Read(10, 110_000), Some.Swept(10)]);

        Assert.Equal([90_000, 110_000], state.SweepReadings[10].Select(read => read.Picofarads!.Value));
        Assert.Null(state.InHand);
    }

    [Fact]
    public void Readings_of_a_broken_off_try_do_not_count()
    {
        var state = Some.Fold([.. Begun, Recognised(10), Some.Read(10, 90_000), new OutputAbandoned(JobStage.Sweep, 10, "clip off"), Recognised(10), Some.Read(10, 95_000), Some.Swept(10)]);

        Assert.Equal([95_000], state.SweepReadings[10].Select(read => read.Picofarads!.Value));
    }

    [Fact]
    public void Readings_from_before_a_stop_do_not_count_after_the_bench_is_connected_again()
    {
        var bench = new BenchConnected { MeterResource = "m", MeterIdentity = "i", MeterDriver = "d", AmplifierGain = 1 };
        var state = Some.Fold([.. Begun, Recognised(10), Some.Read(10, 90_000), bench, Recognised(10), Some.Read(10, 95_000), Some.Swept(10)]);

        Assert.Single(state.SweepReadings[10]);
    }

    [Fact]
    public void An_entry_taken_back_leaves_its_output_missing()
    {
        var state = Some.Fold([.. Begun, Some.Swept(10), new EntryWithdrawn(3)]);

        Assert.Equal([9, 10, 11], state.Missing(JobStage.Sweep));
    }

    [Fact]
    public void Taking_back_a_second_measurement_brings_the_first_one_back()
    {
        var state = Some.Fold([.. Begun, Some.Swept(10, 100_000), Some.Swept(10, 120_000), new EntryWithdrawn(4)]);

        Assert.Equal(100_000, state.Swept[10].PeakPicofarads);
    }

    [Fact]
    public void The_last_result_is_the_latest_that_was_not_taken_back()
    {
        var state = Some.Fold([.. Begun, Some.Swept(10), Some.Swept(9), new EntryWithdrawn(4)]);

        Assert.Equal((3, 10), state.LastResult(JobStage.Sweep));
        Assert.Null(state.LastResult(JobStage.Survey));
    }

    [Fact]
    public void Going_on_with_a_stage_keeps_the_order_of_clipping()
    {
        var state = Some.Fold([.. Begun, Some.Swept(9), Some.Swept(10), new StageStarted(JobStage.Sweep, [9, 10, 11])]);

        Assert.Equal([9, 10], state.ClippingOrder);
    }

    [Fact]
    public void A_survey_as_left_is_missing_until_it_was_read_and_again_when_it_is_taken_back()
    {
        JournalEvent[] read = [.. Begun, Surveyed(JobStage.Survey), new StageStarted(JobStage.AsLeft, [9, 10]), Surveyed(JobStage.AsLeft)];

        Assert.Equal([10], Some.Fold(read).Missing(JobStage.AsLeft));
        var taken = Some.Fold([.. read, new EntryWithdrawn(5)]);
        Assert.Equal([9, 10], taken.Missing(JobStage.AsLeft));
        Assert.Single(taken.Surveyed);
    }

    private static OutputSurveyed Surveyed(JobStage stage) =>
        new() { Stage = stage, Output = 9, ToneHertz = 523, Millivolts = 5, NoiseMillivolts = 0.01, Flags = [] };

    private static OutputRecognised Recognised(int output) => new(JobStage.Sweep, output, 740, RecognisedBy.Tone);
}
