using AutoSweep.Sim.Hands;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Hands;

/// <summary>The hands follow their script and hear nothing but beeps.</summary>
public class BenchHandsTests
{
    [Fact]
    public async Task They_clip_wait_for_the_beep_take_the_clip_off_and_go_on()
    {
        using var hands = new HandsBench(HandsBench.Script([3, 1], []), HandsPhase.Survey);
        hands.Ear.ClientsChanged(1);
        Assert.Equal("begin", (await hands.NextAsync()).Event);
        var clip = await hands.NextAsync();
        Assert.Equal(("clip", 3), (clip.Event, clip.Output));
        Assert.True(await hands.StillForAsync(60));
        hands.Beep();
        Assert.Equal(["beep", "unclip"], [(await hands.NextAsync()).Event, (await hands.NextAsync()).Event]);
        clip = await hands.NextAsync();
        Assert.Equal(("clip", 1), (clip.Event, clip.Output));
    }

    [Fact]
    public async Task A_beep_that_comes_as_soon_as_the_clip_is_on_is_heard()
    {
        using var hands = new HandsBench(HandsBench.Script([3], []), HandsPhase.Survey) { BeepsAtOnce = true };
        hands.Ear.ClientsChanged(1);
        await hands.NextAsync("clip");
        Assert.Equal("beep", (await hands.NextAsync()).Event);
    }

    [Fact]
    public async Task Beeps_close_together_are_one_signal()
    {
        using var hands = new HandsBench(HandsBench.Script([3, 1], []), HandsPhase.Survey);
        hands.Ear.ClientsChanged(1);
        await hands.NextAsync("clip");
        hands.Beep();
        hands.Beep();
        await hands.NextAsync("unclip");
        hands.Beep();
        await hands.NextAsync("clip");
        Assert.True(await hands.StillForAsync(60));
    }

    [Fact]
    public async Task While_the_display_says_wait_they_leave_the_clip_on_whatever_beeps()
    {
        using var hands = new HandsBench(HandsBench.Script([3, 1], []), HandsPhase.Survey);
        hands.Ear.ClientsChanged(1);
        await hands.NextAsync("clip");
        hands.Ear.Read("WAIT FIXTURE");
        hands.Beep();
        Assert.True(await hands.StillForAsync(20));
        hands.Ear.Read("GO ON");
        hands.Beep();
        Assert.Equal("beep", (await hands.NextAsync()).Event);
    }

    [Fact]
    public async Task Without_a_beep_they_lose_patience_and_offer_the_output_again_at_the_end()
    {
        using var hands = new HandsBench(HandsBench.Script([3, 1], []), HandsPhase.Survey);
        hands.Ear.ClientsChanged(1);
        var clip = await hands.NextAsync("clip");
        var tired = await hands.NextAsync();
        Assert.Equal("noBeep", tired.Event);
        Assert.InRange(tired.Seconds - clip.Seconds, 120, 130);
        Assert.Equal(1, (await hands.NextAsync("clip")).Output);
        hands.Beep();
        await hands.NextAsync("retry");
        Assert.Equal(3, (await hands.NextAsync("clip")).Output);
        hands.Beep();
        Assert.Equal("survey", (await hands.NextAsync("end")).Phase.ToString(), ignoreCase: true);
    }

    [Fact]
    public async Task They_give_an_output_up_after_three_rounds()
    {
        using var hands = new HandsBench(HandsBench.Script([3], []), HandsPhase.Survey);
        hands.Ear.ClientsChanged(1);
        for (var i = 0; i < BenchHands.Rounds; i++) Assert.Equal(3, (await hands.NextAsync("clip")).Output);
        await hands.NextAsync("end");
    }

    [Fact]
    public async Task They_keep_their_place_while_no_worker_is_there()
    {
        using var hands = new HandsBench(HandsBench.Script([3, 1], []), HandsPhase.Survey);
        hands.Ear.ClientsChanged(1);
        await hands.NextAsync("clip");
        Assert.True(await hands.StillForAsync(100));
        hands.Ear.ClientsChanged(-1);
        Assert.True(await hands.StillForAsync(500));
        hands.Ear.ClientsChanged(1);
        Assert.True(await hands.StillForAsync(100));
        hands.Beep();
        await hands.NextAsync("beep");
    }

    [Fact]
    public async Task A_sweep_clips_the_fixture_in_the_place_of_the_aged_capacitor()
    {
        using var hands = new HandsBench(HandsBench.Script([], [9]), HandsPhase.Survey, HandsPhase.Sweep);
        hands.Ear.ClientsChanged(1);
        await hands.NextAsync("clip");
        double ToneVolts() => hands.Bench.Look(hands.Bench.Clock.Now, view => view.Signal.ToneVolts);
        var stray = ToneVolts();
        hands.Bench.WithRelays((relays, now) =>
        {
            relays.Drive(1u << 12, now);
            return 0;
        });
        await hands.StillForAsync(1);
        Assert.True(ToneVolts() > 10 * stray);
    }

    [Fact]
    public async Task The_last_survey_goes_up_output_by_output_without_the_firsts_mistakes()
    {
        using var hands = new HandsBench(HandsBench.Script([3, 1, 3], []), HandsPhase.AsLeft);
        hands.Ear.ClientsChanged(1);
        Assert.Equal(1, (await hands.NextAsync("clip")).Output);
        hands.Beep();
        Assert.Equal(3, (await hands.NextAsync("clip")).Output);
        hands.Beep();
        await hands.NextAsync("end");
    }

    [Fact]
    public async Task A_step_may_be_slow()
    {
        var script = HandsBench.Script([3], []);
        script = script with { Survey = [script.Survey[0] with { PauseSeconds = 40, Note = "slow" }] };
        using var hands = new HandsBench(script, HandsPhase.Survey);
        var clip = await hands.NextAsync("clip");
        Assert.Equal("slow", clip.Note);
        Assert.InRange(clip.Seconds, 40, 50);
    }
}
