using AutoSweep.Sim.CapacitanceMeter;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Tests.Support;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Sim.Tests.CapacitanceMeter;

/// <summary>What the hands can see of the clips: a reading that was all of it taken with nothing on them.</summary>
public class CapacitanceClipsTests
{
    private readonly CapacitanceClips clips = new(TestBench.Small().Parts, new(TestBench.Small(), TestBench.Profile, new SimulatedClock(1, new FakeTimeProvider())));

    [Fact]
    public void A_reading_of_empty_clips_shows_them_empty()
    {
        clips.TakeOff();
        var shown = clips.ShownEmpty;
        var over = clips.BeginReading();
        Assert.False(shown.IsCompleted);
        over();
        Assert.True(shown.IsCompletedSuccessfully);
    }

    [Fact]
    public void A_reading_that_began_with_a_part_on_shows_nothing_of_what_came_after()
    {
        clips.Put([1]);
        var over = clips.BeginReading();
        clips.TakeOff();
        over();
        Assert.False(clips.ShownEmpty.IsCompleted);
    }

    [Fact]
    public void A_part_put_on_is_a_new_beginning()
    {
        clips.TakeOff();
        clips.BeginReading()();
        clips.Put([1]);
        clips.TakeOff();
        Assert.False(clips.ShownEmpty.IsCompleted);
    }
}
