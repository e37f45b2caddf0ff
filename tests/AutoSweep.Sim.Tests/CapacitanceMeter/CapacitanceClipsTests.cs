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
    public void An_old_capacitor_on_the_clips_is_what_the_bench_says_it_has_become()
    {
        var output = TestBench.Small().Outputs.First(one => one.Aged is not null);
        clips.PutOld(output.Number);
        var over = clips.BeginReading();
        over();
        Assert.False(clips.ShownEmpty.IsCompleted);
        // Y = ωC(tan δ + j), the parallel equivalent of a lossy capacitor (any textbook on impedance).
        var (omega, admittance) = (2 * Math.PI * 1000, clips.Admittance(2 * Math.PI * 1000));
        Assert.Equal(output.Aged!.Picofarads, admittance.Imaginary / omega * 1e12, 6);
        Assert.Equal(output.Aged.LossTangent, admittance.Real / admittance.Imaginary, 9);
    }

    [Fact]
    public void An_output_without_a_filter_has_none()
    {
        clips.PutOld(TestBench.Small().Outputs.First(one => one.Aged is null).Number);
        Assert.Equal(0, clips.Admittance(1).Magnitude);
    }

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
