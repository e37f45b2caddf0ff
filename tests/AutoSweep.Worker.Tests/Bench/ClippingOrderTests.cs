using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class ClippingOrderTests
{
    [Theory]
    [InlineData(new[] { 1, 2, 3 }, 4)]
    [InlineData(new[] { 9, 1, 2, 3 }, 4)]
    [InlineData(new[] { 1, 3, 5 }, 6)]
    [InlineData(new[] { 1, 2 }, null)]
    [InlineData(new[] { 3, 2, 1 }, null)]
    [InlineData(new[] { 12, 13, 14 }, null)]
    public void Three_in_ascending_order_make_the_next_one_expected(int[] clipped, int? expected)
    {
        Assert.Equal(expected, ClippingOrder.Next(Survey(clipped), JobStage.Survey));
    }

    [Fact]
    public void Outputs_between_the_last_and_the_present_one_were_passed_over()
    {
        Assert.Equal([4, 5], ClippingOrder.PassedOver(Survey(1, 2, 3), JobStage.Survey, to: 6));
        Assert.Empty(ClippingOrder.PassedOver(Survey(3, 1, 2), JobStage.Survey, to: 6));
    }

    private static JobState Survey(params int[] clipped)
    {
        IEnumerable<JournalEvent> events =
        [
            new JobOpened("test", Some.Profile),
            new StageStarted(JobStage.Survey, [.. Some.Profile.Outputs.Select(output => output.Number)]),
            .. clipped.Select(output => Some.Surveyed(output)),
        ];
        return events.Select((what, index) => new JournalEntry(index + 1, default, what)).Aggregate(JobState.Empty, (state, entry) => state.Apply(entry));
    }
}
