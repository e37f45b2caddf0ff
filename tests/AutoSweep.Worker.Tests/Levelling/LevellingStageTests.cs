using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Levelling;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Levelling;

public sealed class LevellingStageTests : IDisposable
{
    private static readonly LevellingOptions Options = new() { WithoutRecap = true, Acknowledged = "test", LeastGapMillimetres = 0.5, Span = TimeSpan.Zero };

    private readonly BenchScene _scene = new();
    private readonly FakeMoves _moves;

    public LevellingStageTests()
    {
        _moves = new(_scene, 15);
        // The profile's own levels, but outputs 3 (3 dB too loud) and 5 (2 dB too soft).
        foreach (var output in _scene.Job.Profile.Outputs)
            _scene.Job.Append(Some.Surveyed(output.Number) with { ToneHertz = _scene.Tone(output.Number), Millivolts = Found(output.Number),
                RelativeUncertainty = 0.001 });
        _scene.Meter.Shown = () => _moves.Millivolts / 1000 * 20;
    }

    [Fact]
    public async Task An_output_is_brought_into_its_band_and_every_move_is_in_the_journal()
    {
        await LevelAsync(3);

        var levelled = _scene.Job.State.Levelled[3];
        Assert.Equal(GuidanceEnding.InBand, levelled.Ending);
        Assert.InRange(20 * Math.Log10(levelled.AfterMillivolts!.Value / levelled.TargetMillivolts), -0.25, 0.25);
        Assert.Equal(Found(3), levelled.BeforeMillivolts!.Value, 6);
        Assert.Equal(_moves.Orders, _scene.Job.State.Levelling.ReadingsOf(3).Select(read => read.After).Skip(1));
        Assert.InRange(levelled.SlopeDecibelsPerMillimetre!.Value, 10, 20);
        Assert.Equal(BenchSound.Done, _scene.Sounds[^1]);
    }

    [Fact]
    public async Task The_meters_display_says_what_to_clip_what_to_move_and_when_it_is_over()
    {
        var stage = Stage();
        await BeginAsync(stage);
        Assert.Equal(["CLIP 3"], _scene.Meter.Texts);
        await WorkAsync(stage, 3);
        Assert.StartsWith("3 OUT 0.", _scene.Meter.Texts[1], StringComparison.Ordinal);
        await WorkAsync(stage, 5);

        Assert.Equal("DONE", _scene.Meter.Texts[^1]);
        Assert.All(_scene.Meter.Texts, text => Assert.InRange(text.Length, 4, 12));
    }

    [Fact]
    public async Task The_hazard_is_acknowledged_in_the_journal_before_the_first_clip()
    {
        await BeginAsync(Stage());

        var hazard = Assert.Single(_scene.Job.State.Levelling.Acknowledged);
        Assert.Contains("chips its teeth", hazard.Hazard, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_an_acknowledgement_no_magnet_is_touched()
    {
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => BeginAsync(Stage(Options with { Acknowledged = null })));

        Assert.Equal(BenchFault.StageNotReady, fault.Kind);
    }

    [Fact]
    public async Task An_undo_takes_the_last_reading_back_and_reads_again()
    {
        _moves.Instead.Enqueue(new MoveOutcome.Moved(new(new(0.00333), new(0), 0.001, 8, true)));
        _moves.Instead.Enqueue(new MoveOutcome.Undone());

        await LevelAsync(5);

        Assert.Single(_scene.Written.OfType<EntryWithdrawn>());
        Assert.DoesNotContain(_scene.Job.State.Levelling.ReadingsOf(5), read => read.Millivolts is > 3.32 and < 3.34);
    }

    [Fact]
    public async Task A_clip_that_comes_off_leaves_the_output_in_the_plan_once()
    {
        var stage = Stage();
        await BeginAsync(stage);
        _moves.Instead.Enqueue(new MoveOutcome.ClipGone());
        _moves.Instead.Enqueue(new MoveOutcome.ClipGone());

        await WorkAsync(stage, 3);
        Assert.Contains(3, _scene.Job.State.Missing(JobStage.Level));
        await WorkAsync(stage, 3);
        Assert.Equal(GuidanceEnding.LeftAlone, _scene.Job.State.Levelled[3].Ending);
    }

    [Fact]
    public async Task A_gap_takes_the_last_reading_back_keeps_those_before_it_and_the_output_goes_on()
    {
        var stage = Stage();
        await BeginAsync(stage);
        _moves.Lost = 2;
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => WorkAsync(stage, 3));
        Assert.Equal("M", fault.LostResource);

        var kept = Assert.Single(_scene.Job.State.Levelling.ReadingsOf(3));
        Assert.Null(kept.After);
        Assert.Single(_scene.Written.OfType<EntryWithdrawn>());
        await WorkAsync(stage, 3);

        Assert.Equal(GuidanceEnding.InBand, _scene.Job.State.Levelled[3].Ending);
        Assert.Equal(kept.Millivolts, _scene.Job.State.Levelled[3].BeforeMillivolts);
    }

    [Fact]
    public async Task A_gap_before_any_reading_takes_none_back()
    {
        var stage = Stage();
        await BeginAsync(stage);
        _moves.Lost = 2;
        await Assert.ThrowsAsync<BenchFaultException>(() => WorkAsync(stage, 3));
        _scene.Meter.Shown = () => throw FakeMoves.Gone;

        await Assert.ThrowsAsync<BenchFaultException>(() => stage.WorkAsync(new(new(3, _scene.Tone(3), RecognisedBy.Tone), []), default));

        Assert.Single(_scene.Job.State.Levelling.ReadingsOf(3));
    }

    [Fact]
    public async Task A_skipped_output_is_left_as_it_is()
    {
        _moves.Instead.Enqueue(new MoveOutcome.Skipped());

        await LevelAsync(3);

        Assert.Equal((GuidanceEnding.LeftAlone, 0), (_scene.Job.State.Levelled[3].Ending, _scene.Job.State.Levelled[3].Moves));
    }

    [Fact]
    public async Task An_ending_that_is_not_the_band_is_shown_and_asked_about()
    {
        _moves.Instead.Enqueue(new MoveOutcome.Moved(new(new(0.02), new(0), 0.001, 8, true)));

        await LevelAsync(3);

        Assert.Equal(GuidanceEnding.WrongWay, _scene.Job.State.Levelled[3].Ending);
        Assert.Equal(BenchSound.Question, _scene.Sounds[^1]);
        Assert.Contains("wrong way", _scene.Board.Status.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_job_that_goes_on_after_a_stop_knows_the_slope_that_it_had_learnt()
    {
        var stage = Stage();
        await BeginAsync(stage);
        _scene.Job.Append(new MagnetRead { Output = 3, Millivolts = Found(3), TargetMillivolts = 4.4, SdDecibels = 0.02 });
        _scene.Job.Append(new MagnetRead { Output = 3, Millivolts = Found(3) / 1.1885, TargetMillivolts = 4.4, SdDecibels = 0.02,
            After = new(MoveDirection.Out, 0.1, 0.02) });

        await WorkAsync(stage, 3, Found(3) / 1.1885);

        Assert.Equal(0.1, _moves.Orders[0].Millimetres, 0.03);
    }

    public void Dispose() => _scene.Dispose();

    private static double Found(int output)
    {
        var expected = Some.Profile.Outputs.Single(one => one.Number == output).ExpectedMillivolts!.Value;
        return output switch { 3 => expected * Math.Pow(10, 3.0 / 20), 5 => expected * Math.Pow(10, -2.0 / 20), _ => expected };
    }

    private async Task LevelAsync(int output)
    {
        var stage = Stage();
        await BeginAsync(stage);
        await WorkAsync(stage, output);
    }

    private Task BeginAsync(LevellingStage stage)
    {
        Assert.Equal([3, 5], stage.Plan);
        _scene.Begin(JobStage.Level, [.. stage.Plan]);
        return stage.RestAsync(default);
    }

    private Task WorkAsync(LevellingStage stage, int output, double? millivolts = null)
    {
        _moves.Millivolts = millivolts ?? Found(output);
        return stage.WorkAsync(new(new(output, _scene.Tone(output), RecognisedBy.Tone), []), default);
    }

    private LevellingStage Stage(LevellingOptions? options = null) =>
        new(_scene.Bench, _scene.Levels, _moves, _scene.Job, _scene.Board, _scene.Signals, options ?? Options);
}
