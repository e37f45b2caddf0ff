using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

/// <summary>A sweep over a filter of the shunt law: the inverse square of the level is a parabola over the capacitance.</summary>
public sealed class SweepStageTests : IDisposable
{
    private const double PeakNanofarads = 131;
    private const double HalfWidthNanofarads = 12;

    private readonly BenchScene _scene = new(gain: 1);
    private readonly FakeClips _clips = new();
    private readonly SweepStage _stage;

    public SweepStageTests()
    {
        _stage = new(_scene.Bench, _clips, _scene.Levels, _scene.Job, _scene.Board, _scene.Signals, _scene.Clock);
        _scene.Begin(JobStage.Sweep, [.. _stage.Plan]);
        _scene.Meter.Shown = () => 0.006 / Math.Sqrt(1 + Math.Pow((_scene.Fixture.Present.Nanofarads - PeakNanofarads) / HalfWidthNanofarads, 2));
    }

    public void Dispose() => _scene.Dispose();

    [Fact]
    public void Only_filtered_outputs_are_in_the_plan() => Assert.Equal([9, 10, 11, 12, 13, 14], _stage.Plan);

    [Fact]
    public async Task The_peak_of_the_filter_is_found_and_written_down_with_its_readings()
    {
        await ClipAsync(12);

        var swept = _scene.Job.State.Swept[12];
        Assert.Equal(PeakStopReason.BoundReached, swept.Reason);
        Assert.Equal(PeakNanofarads, swept.PeakPicofarads!.Value / 1000.0, 0.05 * HalfWidthNanofarads);
        Assert.Equal(HalfWidthNanofarads, swept.HalfWidthPicofarads!.Value / 1000, 0.1 * HalfWidthNanofarads);
        Assert.Equal(6, swept.PeakMillivolts!.Value, 0.05);
        Assert.Equal(swept.Readings, _scene.Job.State.SweepReadings[12].Count);
        Assert.InRange(swept.Readings, 3, 12);
    }

    [Fact]
    public async Task A_reading_during_which_the_relays_fell_open_counts_for_nothing_and_is_taken_anew()
    {
        _scene.Fixture.Falls.Enqueue(false);
        _scene.Fixture.Falls.Enqueue(true);

        await ClipAsync(12);

        var (sets, readings) = (_scene.Fixture.Sets, _scene.Job.State.SweepReadings[12]);
        Assert.Equal(sets[1], sets[2]);
        Assert.Single(readings, reading => reading.Picofarads == sets[1].Picofarads);
        Assert.Equal(PeakNanofarads, _scene.Job.State.Swept[12].PeakPicofarads!.Value / 1000.0, 0.05 * HalfWidthNanofarads);
    }

    [Fact]
    public async Task A_tone_that_was_not_heard_because_the_relays_fell_open_is_listened_for_again()
    {
        await ClipAsync(12);
        var readings = _scene.Job.State.Swept[12].Readings;
        foreach (var hasFallen in Enumerable.Repeat(false, readings).Append(true))
            _scene.Fixture.Falls.Enqueue(hasFallen);
        _clips.Sights.Enqueue(new ToneSight.Silence(Hum: false));
        _clips.Sights.Enqueue(new ToneSight.Tone(12, 1431.5));

        await ClipAsync(12);

        Assert.Equal(1431.5, _scene.Job.State.Swept[12].ToneHertz);
        Assert.DoesNotContain(BenchSound.Question, _scene.Sounds);
    }

    [Fact]
    public async Task A_fixture_whose_relays_fall_open_during_every_reading_stops_the_sweep()
    {
        foreach (var hasFallen in Enumerable.Repeat(true, 3))
            _scene.Fixture.Falls.Enqueue(hasFallen);

        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => ClipAsync(12));

        Assert.Equal(BenchFault.FixtureFault, fault.Kind);
        Assert.Contains("opened its relays by itself", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_tone_is_confirmed_at_the_peak()
    {
        _clips.Sights.Enqueue(new ToneSight.Tone(12, 1431.5));

        await ClipAsync(12);

        var swept = _scene.Job.State.Swept[12];
        Assert.Equal(1431.5, swept.ToneHertz);
        Assert.Contains(new Capacitance((swept.PeakPicofarads!.Value / 100 * 100) + 50), _scene.Fixture.Sets);
    }

    [Fact]
    public async Task The_result_is_on_record_and_the_fixture_at_rest_before_the_beep()
    {
        var before = (Recorded: false, Present: default(Capacitance));
        _scene.Board.Sounded += _ => before = (_scene.Job.State.IsDone(JobStage.Sweep, 12), _scene.Fixture.Present);

        await ClipAsync(12);

        Assert.True(before.Recorded);
        Assert.Equal(_scene.Fixture.Present, before.Present);
        Assert.Equal([BenchSound.Recognised, BenchSound.Done], _scene.Sounds);
    }

    [Fact]
    public async Task The_fixture_rests_where_the_next_output_is_expected_to_peak()
    {
        await _stage.RestAsync(default);
        Assert.Equal(new Capacitance(100_050), _scene.Fixture.Present); // output 9, by the profile

        foreach (var output in new[] { 9, 10, 11 })
            _scene.Job.Append(Some.Swept(output));
        await ClipAsync(12);

        // Output 13 is of the same group as 12, whose peak was 9 % above the profile's 120 nF: so is the one expected now.
        Assert.InRange(_scene.Fixture.Present.Nanofarads, 124, 133);
    }

    [Fact]
    public async Task After_the_last_output_every_relay_is_open()
    {
        foreach (var output in new[] { 9, 10, 11, 13, 14 })
            _scene.Job.Append(Some.Swept(output));

        await ClipAsync(12);

        Assert.Empty(_scene.Job.State.Missing(JobStage.Sweep));
        Assert.True(_scene.Fixture.IsOpen);
    }

    [Fact]
    public async Task Letting_go_of_the_bench_lets_go_of_the_fixture()
    {
        await ClipAsync(12);
        await _scene.Bench.DisposeAsync();

        Assert.True(_scene.Fixture.IsDisposed);
    }

    public static TheoryData<ToneSight, string, BenchSound> Objections => new()
    {
        { new ToneSight.Silence(Hum: false), "The tone went away", BenchSound.Question },
        { new ToneSight.Tone(13, 1578.3), "moved to output 13", BenchSound.WrongOutput },
    };

    [Theory]
    [MemberData(nameof(Objections))]
    public async Task Readings_of_a_clip_that_moved_do_not_count_and_the_output_is_measured_again(ToneSight sight, string why, BenchSound sound)
    {
        _clips.Sights.Enqueue(sight);

        await ClipAsync(12);

        Assert.Contains(why, Assert.Single(_scene.Written.OfType<OutputAbandoned>()).Why, StringComparison.Ordinal);
        Assert.Contains(12, _scene.Job.State.Missing(JobStage.Sweep));
        Assert.Equal([BenchSound.Recognised, sound], _scene.Sounds);
        Assert.Equal(BenchActivity.NeedsYou, _scene.Board.Status.Activity);

        await ClipAsync(12);

        Assert.Equal(_scene.Job.State.Swept[12].Readings, _scene.Job.State.SweepReadings[12].Count);
    }

    [Fact]
    public async Task An_output_swept_on_the_persons_word_needs_no_tone()
    {
        _clips.Sights.Enqueue(new ToneSight.Silence(Hum: false));

        await _stage.WorkAsync(new(new(12, null, RecognisedBy.Person), []), default);

        Assert.Equal(PeakStopReason.BoundReached, _scene.Job.State.Swept[12].Reason);
    }

    [Fact]
    public async Task Outputs_that_stayed_silent_are_written_down_as_level_lost()
    {
        var reading = new LevelSample(Level.FromMillivolts(0.01), Level.FromMillivolts(0.002), 0.1, 3, Settled: true);

        await _stage.WorkAsync(new(null, [new(9, reading, false), new(10, reading, true)]), default);

        Assert.All([9, 10], output => Assert.Equal(PeakStopReason.LevelLost, _scene.Job.State.Swept[output].Reason));
        Assert.Empty(_scene.Sounds);
    }

    [Fact]
    public async Task An_output_whose_level_does_not_change_with_the_capacitance_gets_its_reason()
    {
        _scene.Meter.Shown = () => 0.004;

        await ClipAsync(12);

        Assert.Equal(PeakStopReason.ResponseFlat, _scene.Job.State.Swept[12].Reason);
    }

    // A fixture that was unplugged at the last reading shows here at the latest.
    [Fact]
    public async Task Even_before_a_result_without_a_peak_the_fixture_is_set_once_more_and_read_back()
    {
        _scene.Meter.Shown = () => 0.004;

        await ClipAsync(12);

        // Its readings, once more, and the rest for the next output.
        Assert.Equal(_scene.Job.State.SweepReadings[12].Count + 2, _scene.Fixture.Sets.Count);
    }

    private Task ClipAsync(int output) => _stage.WorkAsync(new(new(output, _scene.Tone(output), RecognisedBy.Tone), []), default);
}
