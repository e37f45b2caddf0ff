using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class ClipWatchTests : IDisposable
{
    private static readonly int[] All = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14];

    private readonly BenchScene _scene = new();
    private readonly ClipWatch _watch;

    public ClipWatchTests() => _watch = _scene.Watch();

    public void Dispose() => _scene.Dispose();

    [Fact]
    public async Task An_output_of_the_plan_is_handed_over_with_its_tone()
    {
        _scene.Begin(JobStage.Survey, All);
        _scene.Clip(7);

        var clipped = (await NextAsync(JobStage.Survey)).Clipped!;

        Assert.Equal((7, RecognisedBy.Tone), (clipped.Output, clipped.By));
        Assert.Equal(_scene.Tone(7), clipped.ToneHertz!.Value, 6);
        Assert.Empty(_scene.Asked);
    }

    [Fact]
    public async Task An_output_that_is_done_already_is_asked_about_once_however_long_it_stays_clipped()
    {
        _scene.Begin(JobStage.Survey, All);
        _scene.Surveyed(1);
        _scene.Clip(1);
        _scene.Clip(1);
        _scene.Clip(1);
        _scene.Clip(2);

        Assert.Equal(2, (await NextAsync(JobStage.Survey)).Clipped!.Output);
        Assert.Equal([ClipQuestion.AlreadyDone], _scene.Asked);
        Assert.Equal([BenchSound.WrongOutput], _scene.Sounds);
    }

    [Fact]
    public async Task An_output_that_comes_back_after_a_gap_is_asked_about_again()
    {
        _scene.Begin(JobStage.Survey, All);
        _scene.Surveyed(1);
        _scene.Clip(1);
        _scene.Meter.Count(0, 0);
        _scene.Clip(1);
        _scene.Clip(2);

        await NextAsync(JobStage.Survey);
        Assert.Equal([ClipQuestion.AlreadyDone, ClipQuestion.AlreadyDone], _scene.Asked);
    }

    [Fact]
    public async Task An_output_that_is_not_in_the_plan_is_asked_about()
    {
        _scene.Begin(JobStage.Sweep, 9, 10);
        _scene.Clip(3);
        _scene.Clip(9);

        Assert.Equal(9, (await NextAsync(JobStage.Sweep)).Clipped!.Output);
        Assert.Equal([ClipQuestion.NotInPlan], _scene.Asked);
    }

    [Fact]
    public async Task An_output_that_was_taken_for_silent_and_now_sounds_is_measured_after_all()
    {
        _scene.Begin(JobStage.Survey, All);
        _scene.Job.Append(Some.Surveyed(4, SurveyFinding.Dead));
        _scene.Clip(4);

        Assert.Equal(4, (await NextAsync(JobStage.Survey)).Clipped!.Output);
        Assert.Empty(_scene.Asked);
    }

    [Fact]
    public async Task A_quick_hand_leaves_no_gap_and_is_followed_all_the_same()
    {
        _scene.Begin(JobStage.Survey, All);
        _scene.Clip(1);
        Assert.Equal(1, (await NextAsync(JobStage.Survey)).Clipped!.Output);
        _scene.Surveyed(1);
        _scene.Clip(1);
        _scene.Clip(2);

        Assert.Equal(2, (await NextAsync(JobStage.Survey)).Clipped!.Output);
        Assert.Empty(_scene.Asked);
    }

    [Fact]
    public async Task An_output_passed_over_in_silence_is_told_by_the_order_of_clipping()
    {
        _scene.Begin(JobStage.Survey, All);
        _scene.Surveyed(1, 2, 3);
        _scene.Meter.Shown = () => 0.0002;
        _scene.Meter.Heard = () => _scene.Asked.Any() ? _scene.Tone(5) : 0;

        var verdict = await NextAsync(JobStage.Survey);

        Assert.Equal([ClipQuestion.NoTone], _scene.Asked);
        Assert.Equal(4, _scene.Written.OfType<ClipQuestioned>().Single().Output);
        Assert.Equal(5, verdict.Clipped!.Output);
        var silent = Assert.Single(verdict.Silent);
        Assert.Equal((4, false), (silent.Output, silent.HumCounted));
        Assert.Equal(0.01, silent.Reading.Mean.Millivolts, 9); // 0.2 mV at the meter behind a gain of 20
    }

    [Fact]
    public async Task Without_an_order_of_clipping_silence_condemns_no_output()
    {
        _scene.Begin(JobStage.Survey, All);
        _scene.Surveyed(3, 9, 1);
        _scene.Meter.Shown = () => 0.0002;
        _scene.Meter.Heard = () => _scene.Asked.Any() ? _scene.Tone(5) : 0;

        Assert.Empty((await NextAsync(JobStage.Survey)).Silent);
    }

    [Fact]
    public async Task A_tone_that_cannot_be_counted_goes_by_the_order_of_clipping_after_three_looks()
    {
        _scene.Begin(JobStage.Survey, All);
        _scene.Surveyed(1, 2, 3);
        Miscount();

        var clipped = (await NextAsync(JobStage.Survey)).Clipped!;

        Assert.Equal((4, null, RecognisedBy.Order), (clipped.Output, clipped.ToneHertz, clipped.By));
    }

    [Fact]
    public async Task A_tone_that_cannot_be_counted_is_asked_about_once_where_no_order_tells()
    {
        _scene.Begin(JobStage.Survey, All);
        Miscount(looks: 12);
        _scene.Clip(2);

        Assert.Equal(2, (await NextAsync(JobStage.Survey)).Clipped!.Output);
        Assert.Equal([ClipQuestion.ToneNotCounted], _scene.Asked);
    }

    [Fact]
    public async Task A_foreign_tone_in_a_surveys_order_belongs_to_the_next_output()
    {
        _scene.Begin(JobStage.Survey, All);
        _scene.Surveyed(1, 2, 3);
        _scene.Meter.Count(680, 680, 680, 680, 680);

        var clipped = (await NextAsync(JobStage.Survey)).Clipped!;

        Assert.Equal((4, 680.0, RecognisedBy.Order), (clipped.Output, clipped.ToneHertz, clipped.By));
    }

    [Fact]
    public async Task A_foreign_tone_without_an_order_is_asked_about_once()
    {
        _scene.Begin(JobStage.Survey, All);
        _scene.Meter.Count([.. Enumerable.Repeat(680.0, 15)]);
        _scene.Clip(1);

        Assert.Equal(1, (await NextAsync(JobStage.Survey)).Clipped!.Output);
        Assert.Equal([ClipQuestion.UnknownTone], _scene.Asked);
    }

    [Fact]
    public async Task A_survey_whose_last_outputs_stay_silent_ends_by_itself()
    {
        _scene.Begin(JobStage.Survey, 1, 2, 3);
        _scene.Surveyed(1);
        _scene.Meter.Shown = () => 0.0002;
        _scene.Meter.Heard = () => 60;

        var verdict = await NextAsync(JobStage.Survey);

        Assert.Null(verdict.Clipped);
        Assert.Equal([(2, true), (3, true)], verdict.Silent.Select(one => (one.Output, one.HumCounted)));
    }

    [Fact]
    public async Task A_silent_first_output_keeps_the_reading_of_its_own_turn_and_not_of_the_clip_in_the_air()
    {
        _scene.Begin(JobStage.Survey, 1, 2);
        _scene.Meter.Shown = () => 0.0002;
        _scene.Meter.Heard = () => _scene.Asked.Any() ? _scene.Tone(2) : 0;
        var watch = _scene.Watch();
        Assert.Equal(2, (await watch.NextAsync(JobStage.Survey, default)).Clipped!.Output);
        _scene.Surveyed(2);
        _scene.Meter.Shown = () => 0.004;
        _scene.Meter.Heard = () => 60;

        var silent = Assert.Single((await watch.NextAsync(JobStage.Survey, default)).Silent);

        Assert.Equal((1, false), (silent.Output, silent.HumCounted));
        Assert.Equal(0.01, silent.Reading.Mean.Millivolts, 9); // 0.2 mV at the meter behind a gain of 20
    }

    [Fact]
    public async Task A_sweep_is_as_patient_with_outputs_that_were_silent_in_the_survey_because_an_open_capacitor_silences()
    {
        var began = _scene.Clock.GetTimestamp();
        _scene.Begin(JobStage.Survey, All);
        _scene.Job.Append(Some.Surveyed(9, SurveyFinding.Dead));
        _scene.Job.Append(Some.Surveyed(10, SurveyFinding.HumOnly));
        _scene.Begin(JobStage.Sweep, 9, 10);
        _scene.Meter.Shown = () => 0.0002;
        _scene.Meter.Heard = () => 0;

        var verdict = await NextAsync(JobStage.Sweep);

        Assert.Null(verdict.Clipped);
        Assert.Equal([9, 10], verdict.Silent.Select(one => one.Output));
        Assert.True(_scene.Clock.GetElapsedTime(began) > _scene.Options.SilenceBeforeSweepConclusion);
    }

    [Fact]
    public async Task A_sweep_waits_longer_for_outputs_that_the_survey_heard()
    {
        var began = _scene.Clock.GetTimestamp();
        _scene.Begin(JobStage.Sweep, 9);
        _scene.Meter.Shown = () => 0.0002;
        _scene.Meter.Heard = () => 0;

        Assert.Equal([9], (await NextAsync(JobStage.Sweep)).Silent.Select(one => one.Output));
        Assert.True(_scene.Clock.GetElapsedTime(began) > _scene.Options.SilenceBeforeSweepConclusion);
        Assert.InRange(_scene.Asked.Count(), 2, 5);
    }

    [Fact]
    public async Task A_tone_hidden_by_a_far_off_capacitance_is_hunted_for()
    {
        _scene.Begin(JobStage.Sweep, 9);
        // The counter hears output 9 only near its peak at 120 nF, well off the 100 nF of the profile.
        _scene.Meter.Shown = () => 0.1 / Math.Sqrt(1 + Math.Pow((_scene.Fixture.Present.Nanofarads - 120) / 4, 2));
        _scene.Meter.Heard = () => Math.Abs(_scene.Fixture.Present.Nanofarads - 120) < 8 ? _scene.Tone(9) : 0;

        Assert.Equal(9, (await NextAsync(JobStage.Sweep)).Clipped!.Output);
    }

    [Fact]
    public async Task A_sweep_that_was_held_up_for_longer_than_its_patience_hunts_before_it_asks()
    {
        _scene.Begin(JobStage.Sweep, 9);
        _scene.Meter.Shown = () => 0.1 / Math.Sqrt(1 + Math.Pow((_scene.Fixture.Present.Nanofarads - 120) / 4, 2));
        _scene.Meter.Heard = () => Math.Abs(_scene.Fixture.Present.Nanofarads - 120) < 8 ? _scene.Tone(9) : 0;
        var counts = 0;
        _scene.Meter.Counting += () => _scene.Clock.Advance(++counts == 4 ? 2 * _scene.Options.SilenceBeforeSweepQuestion : TimeSpan.Zero);

        Assert.Equal(9, (await NextAsync(JobStage.Sweep)).Clipped!.Output);
        Assert.Empty(_scene.Asked);
    }

    // Counts that never agree, as a counter under its specified level gives: ten make a look.
    private void Miscount(int looks = 3)
    {
        for (var count = 0; count < 10 * looks; count++)
            _scene.Meter.Count(count % 2 == 0 ? 505 : 515);
    }

    private Task<ClipVerdict> NextAsync(JobStage stage)
    {
        // An error in the watch must end in a failed test, not in a watch without end.
        var end = _scene.Clock.GetUtcNow() + TimeSpan.FromHours(1);
        _scene.Meter.Counting += () => Assert.True(_scene.Clock.GetUtcNow() < end, "The watch came to no verdict within an hour.");
        return _watch.NextAsync(stage, default);
    }
}
