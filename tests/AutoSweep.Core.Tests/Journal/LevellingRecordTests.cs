using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Journal;

public sealed class LevellingRecordTests
{
    private static readonly JournalEvent[] Begun = [new JobOpened("AutoSweep", Some.Profile), new StageStarted(JobStage.Level, [11, 9])];

    [Fact]
    public void Outputs_that_were_not_levelled_are_missing_in_the_order_of_the_work()
    {
        Assert.Equal([11, 9], Some.Fold(Begun).Missing(JobStage.Level));
        Assert.Equal([11], Some.Fold([.. Begun, Done(9)]).Missing(JobStage.Level));
    }

    [Fact]
    public void An_undo_takes_the_last_reading_back_and_the_one_before_stands()
    {
        var state = Some.Fold([.. Begun, Read(9, 5), Read(9, 4.5, 0.1), Read(11, 3)]);

        Assert.Equal((5L, 11), state.LastResult(JobStage.Level));
        state = state.Apply(new(6, Some.Time, new EntryWithdrawn(5)));
        state = state.Apply(new(7, Some.Time, new EntryWithdrawn(4)));
        Assert.Equal([5], state.Levelling.ReadingsOf(9).Select(read => read.Millivolts));
        Assert.Equal((3L, 9), state.LastResult(JobStage.Level));
    }

    [Fact]
    public void An_outcome_that_is_taken_back_leaves_its_readings_and_the_output_is_missing_again()
    {
        var state = Some.Fold([.. Begun, Read(9, 5), Done(9), Done(11), new StageEnded(JobStage.Level), new EntryWithdrawn(4)]);

        Assert.Equal([9], state.Missing(JobStage.Level));
        Assert.Single(state.Levelling.ReadingsOf(9));
        Assert.DoesNotContain(JobStage.Level, state.Ended);
    }

    [Fact]
    public void Every_acknowledgement_is_kept()
    {
        var hazard = new HazardAcknowledged(JobStage.Level, "a touched wheel is ruined", "typed");

        Assert.Equal([hazard, hazard], Some.Fold([.. Begun, hazard, hazard]).Levelling.Acknowledged);
    }

    private static MagnetRead Read(int output, double millivolts, double? outward = null) => new()
    {
        Output = output, Millivolts = millivolts, TargetMillivolts = 4, SdDecibels = 0.02,
        After = outward is { } millimetres ? new(MoveDirection.Out, millimetres) : null,
    };

    private static OutputLevelled Done(int output) => new() { Output = output, Ending = GuidanceEnding.InBand, Moves = 2, TargetMillivolts = 4 };
}
