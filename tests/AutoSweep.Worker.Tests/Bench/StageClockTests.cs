using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class StageClockTests
{
    private readonly FakeTimeProvider _time = new();

    [Fact]
    public void Nothing_is_said_before_two_outputs_have_set_a_pace()
    {
        var clock = new StageClock(_time);
        Assert.Equal("", clock.Remaining(JobStage.Sweep, 0, 43));
        _time.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal("", clock.Remaining(JobStage.Sweep, 1, 43));
    }

    [Theory]
    [InlineData(10, 2, 12, "about 50 s left")]
    [InlineData(60, 2, 43, "about 21 min left")]
    [InlineData(60, 43, 43, "")]
    public void What_is_left_goes_by_the_pace_of_this_sitting(int seconds, int done, int planned, string expected)
    {
        var clock = new StageClock(_time);
        clock.Remaining(JobStage.Sweep, 0, planned);
        _time.Advance(TimeSpan.FromSeconds(seconds));

        Assert.Equal(expected, clock.Remaining(JobStage.Sweep, done, planned));
    }

    [Fact]
    public void Outputs_done_in_an_earlier_sitting_or_stage_set_no_pace()
    {
        var clock = new StageClock(_time);
        clock.Remaining(JobStage.Survey, 90, 91);
        clock.Remaining(JobStage.Sweep, 30, 43);
        _time.Advance(TimeSpan.FromMinutes(2));

        Assert.Equal("about 11 min left", clock.Remaining(JobStage.Sweep, 32, 43));
    }
}
