using AutoSweep.Core.Journal;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class SurveyStageTests : IDisposable
{
    private readonly BenchScene _scene = new(gain: 1);
    private readonly SurveyStage _stage;

    public SurveyStageTests()
    {
        _stage = new(_scene.Bench, _scene.Levels, _scene.Job, _scene.Board, _scene.Signals, new() { Span = TimeSpan.Zero }, _scene.Clock);
        _scene.Begin(JobStage.Survey, [.. _stage.Plan]);
        _scene.Meter.Shown = () => 0.004;
    }

    public void Dispose() => _scene.Dispose();

    [Fact]
    public void Every_output_of_the_generator_is_in_the_plan() =>
        Assert.Equal(Enumerable.Range(1, 14), _stage.Plan);

    [Fact]
    public async Task Between_outputs_every_relay_is_open()
    {
        await _scene.Fixture.SetAsync(new(100_000), default);

        await _stage.RestAsync(default);

        Assert.True(_scene.Fixture.IsOpen);
    }

    [Fact]
    public async Task A_healthy_output_has_tone_level_and_noise_and_no_flag()
    {
        _scene.Meter.Level(0.00399, 0.00401, 0.00400, 0.00400, 0.00401, 0.00399, 0.00400);

        await ClipAsync(2, 536.1);

        var surveyed = _scene.Job.State.Surveyed[2];
        Assert.Equal(536.1, surveyed.ToneHertz);
        Assert.Equal(4.0, surveyed.Millivolts, 9);
        Assert.Equal(0.00816, surveyed.NoiseMillivolts, 4); // four of seven samples 0.01 mV off: sqrt(4 * 0.01^2 / 6)
        Assert.Empty(surveyed.Flags);
    }

    [Fact]
    public async Task The_result_is_on_record_before_the_beep()
    {
        var recorded = false;
        _scene.Board.Sounded += _ => recorded = _scene.Job.State.IsDone(JobStage.Survey, 2);

        await ClipAsync(2, 536);

        Assert.True(recorded);
        Assert.Equal([BenchSound.Recognised, BenchSound.Done], _scene.Sounds);
        Assert.Equal(1, _scene.Meter.Beeps);
    }

    // Output 3 has no filter, output 9 is tuned: an aged capacitor there may hide a tone from the counter.
    [Theory]
    [InlineData(3, 0.01, false, SurveyFinding.Dead)]
    [InlineData(3, 0.6, true, SurveyFinding.HumOnly)]
    [InlineData(3, 0.6, false, SurveyFinding.HumOnly)]
    [InlineData(9, 0.01, false, SurveyFinding.Dead)]
    [InlineData(9, 0.6, true, SurveyFinding.HumOnly)]
    [InlineData(9, 0.6, false, SurveyFinding.ToneNotCounted)]
    public async Task A_silent_output_is_written_down_with_what_the_meter_read(int output, double millivolts, bool hum, SurveyFinding finding)
    {
        var reading = new LevelSample(Level.FromMillivolts(millivolts), Level.FromMillivolts(0.002), 0.1, 3, Settled: true);

        await _stage.WorkAsync(new(null, [new(output, reading, hum)]), default);

        var surveyed = _scene.Job.State.Surveyed[output];
        Assert.Equal([finding], surveyed.Flags);
        Assert.Null(surveyed.ToneHertz);
        Assert.Equal(millivolts, surveyed.Millivolts, 9);
    }

    [Fact]
    public async Task A_foreign_tone_named_by_the_order_is_a_wrong_tone()
    {
        await _stage.WorkAsync(new(new(4, 680, RecognisedBy.Order), []), default);

        Assert.Equal([SurveyFinding.WrongTone], _scene.Job.State.Surveyed[4].Flags);
    }

    // Nobody listened for a tone: the survey must not say that there was none.
    [Theory]
    [InlineData(4.2)]
    [InlineData(0.005, SurveyFinding.Dead)]
    public async Task An_output_named_by_a_person_is_flagged_only_when_it_is_silent(double millivolts, params SurveyFinding[] flags)
    {
        _scene.Meter.Shown = () => millivolts / 1000;

        await _stage.WorkAsync(new(new(4, null, RecognisedBy.Person), []), default);

        var surveyed = _scene.Job.State.Surveyed[4];
        Assert.Equal(flags, surveyed.Flags);
        Assert.True(surveyed.IsNamedByPerson);
    }

    [Fact]
    public async Task An_output_named_by_the_order_alone_has_a_tone_that_was_not_counted()
    {
        await _stage.WorkAsync(new(new(4, null, RecognisedBy.Order), []), default);

        Assert.Equal([SurveyFinding.ToneNotCounted], _scene.Job.State.Surveyed[4].Flags);
    }

    [Fact]
    public async Task A_level_that_comes_and_goes_is_unsteady()
    {
        _scene.Meter.Level(0.0040, 0.0044, 0.0036, 0.0042, 0.0038, 0.0044, 0.0040);

        await ClipAsync(5, 715.9);

        Assert.Equal([SurveyFinding.Unsteady], _scene.Job.State.Surveyed[5].Flags);
    }

    // Output 5 has a wheel of its own rate, tone over teeth. At the detector's corner frequency a one-pole filter passes 1/sqrt(2).
    [Theory]
    [InlineData(0.10, true)]
    [InlineData(0.02, false)]
    public async Task A_swing_at_the_wheels_own_rate_is_kept_with_the_detectors_evening_out_taken_back(double depth, bool unsteady)
    {
        var tone = _scene.Tone(5);
        var rate = tone / _scene.Job.Profile.Outputs.Single(one => one.Number == 5).WheelTeeth;
        var corner = TimeSpan.FromSeconds(1 / (2 * Math.PI * rate));
        _scene.Meter.Burst = new([.. Enumerable.Range(0, 64).Select(index => 0.004 * (1 + (depth / Math.Sqrt(2) * Math.Sin(2 * Math.PI * rate * 0.021 * index))))],
            TimeSpan.FromSeconds(0.021), TimeSpan.Zero, corner);

        await ClipAsync(5, tone);

        Assert.Equal(depth, _scene.Job.State.Surveyed[5].WheelSwing!.Value, depth * 1e-3);
        Assert.Equal(unsteady ? [SurveyFinding.Unsteady] : [], _scene.Job.State.Surveyed[5].Flags);
    }

    [Fact]
    public async Task A_meter_that_takes_no_series_leaves_the_swing_open()
    {
        await ClipAsync(5, _scene.Tone(5));

        Assert.Null(_scene.Job.State.Surveyed[5].WheelSwing);
    }

    [Theory]
    [InlineData(new[] { 2, 1, 3 }, new[] { 1, 2 })]
    [InlineData(new[] { 1, 3, 2, 4 }, new[] { 2, 3 })]
    [InlineData(new[] { 1, 2, 5, 4, 6 }, new[] { 4, 5 })]
    public async Task A_swap_at_the_beginning_or_beside_a_silent_output_shows_when_the_next_comes(int[] clipped, int[] swapped)
    {
        foreach (var output in clipped)
            await ClipAsync(output, _scene.Tone(output));

        Assert.Equal(swapped, Flagged(SurveyFinding.Swapped));
    }

    [Fact]
    public async Task A_level_that_swings_as_its_wheel_turns_is_unsteady()
    {
        _scene.Meter.Burst = Burst(turns: 536.1 / 16, depth: 0.08);

        await ClipAsync(2, 536.1);

        Assert.Equal([SurveyFinding.Unsteady], _scene.Job.State.Surveyed[2].Flags);
    }

    // 788.96 Hz over 16 teeth turns 49.3 times a second: one turn a sample, so each sample averages a whole turn away.
    [Fact]
    public async Task A_wheel_that_turns_as_often_as_the_meter_samples_is_not_called_unsteady_for_what_noise_makes_of_it()
    {
        _scene.Meter.Burst = Burst(turns: 788.96 / 16, depth: 0.01);

        await ClipAsync(6, 788.96);

        Assert.Empty(_scene.Job.State.Surveyed[6].Flags);
    }

    // A swing as a meter sees it: averaged over an aperture of 20 ms, a sample every 20 ms, 0.6 % of noise (standard deviation) from a fixed seed.
    private static LevelBurst Burst(double turns, double depth)
    {
        var (aperture, random) = (TimeSpan.FromMilliseconds(20), new Random(7));
        var half = Math.PI * turns * aperture.TotalSeconds;
        var seen = depth * Math.Sin(half) / half;
        return new(
            [.. Enumerable.Range(0, 64).Select(i => 0.08 * (1 + (seen * Math.Sin(2 * Math.PI * turns * i * 0.02)) + (0.02 * (random.NextDouble() - 0.5))))],
            aperture, aperture, TimeSpan.Zero);
    }

    [Fact]
    public async Task Two_neighbours_that_come_in_each_others_place_are_perhaps_swapped()
    {
        foreach (var output in new[] { 1, 2, 4, 3, 5 })
            await ClipAsync(output, _scene.Tone(output));

        Assert.Equal([3, 4], Flagged(SurveyFinding.Swapped));
    }

    [Theory]
    [InlineData(new[] { 1, 2, 3, 4, 5 })]
    [InlineData(new[] { 5, 4, 3, 2, 1 })]
    [InlineData(new[] { 1, 2, 5, 3, 4 })]
    public async Task Another_order_is_no_swap(int[] clipped)
    {
        foreach (var output in clipped)
            await ClipAsync(output, _scene.Tone(output));

        Assert.Empty(Flagged(SurveyFinding.Swapped));
    }

    [Fact]
    public async Task A_survey_as_left_stays_beside_the_one_as_found()
    {
        await ClipAsync(2, 536.1);
        var last = new SurveyStage(
            _scene.Bench, _scene.Levels, _scene.Job, _scene.Board, _scene.Signals, new() { Span = TimeSpan.Zero }, _scene.Clock, JobStage.AsLeft);
        _scene.Begin(JobStage.AsLeft, [.. last.Plan]);
        _scene.Meter.Shown = () => 0.0055;

        await last.WorkAsync(new(new(2, 536.1, RecognisedBy.Tone), []), default);

        Assert.Equal(4.0, _scene.Job.State.Surveyed[2].Millivolts, 9);
        Assert.Equal(5.5, _scene.Job.State.AsLeft[2].Millivolts, 9);
    }

    private IEnumerable<int> Flagged(SurveyFinding finding) =>
        _scene.Job.State.Surveyed.Values.Where(one => one.Flags.Contains(finding)).Select(one => one.Output);

    private Task ClipAsync(int output, double hertz) => _stage.WorkAsync(new(new(output, hertz, RecognisedBy.Tone), []), default);
}
