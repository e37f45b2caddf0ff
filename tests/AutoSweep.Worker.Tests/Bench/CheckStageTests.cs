using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class CheckStageTests : IDisposable
{
    private readonly BenchScene _scene = new();

    public CheckStageTests()
    {
        _scene.Begin(JobStage.Sweep, 9, 10);
        foreach (var output in new[] { 9, 10 })
            _scene.Job.Append(Some.Swept(output) with { ToneHertz = _scene.Tone(output) });
        _scene.Job.Append(new OutputFitted
        {
            Output = 9,
            Parts = ["A", "B"],
            MeasuredPicofarads = 104_567,
            StandardUncertaintyPicofarads = 30,
            Dissipation = 0,
            WantedPicofarads = 104_567,
            LossDecibels = 0.001,
            LedgerSequence = 2,
        });
    }

    [Fact]
    public void Only_fitted_outputs_are_checked()
    {
        Assert.Equal([9], Stage().Plan);
    }

    [Fact]
    public async Task A_level_as_predicted_is_written_down_with_one_beep()
    {
        await CheckAsync(millivolts: 5.38);

        Assert.True(_scene.Job.State.Checked[9].IsExplained);
        Assert.Equal([BenchSound.Recognised, BenchSound.Done], _scene.Sounds);
        Assert.Empty(_scene.Job.State.Missing(JobStage.Check));
    }

    [Fact]
    public async Task A_level_that_noise_does_not_explain_is_written_down_and_shown()
    {
        await CheckAsync(millivolts: 2.7);

        Assert.False(_scene.Job.State.Checked[9].IsExplained);
        Assert.Equal([BenchSound.Recognised, BenchSound.Question], _scene.Sounds);
        Assert.Equal(BenchActivity.NeedsYou, _scene.Board.Status.Activity);
        Assert.Contains("2.700 mV where 5.372 mV were predicted (-6.0 dB)", _scene.Board.Status.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fitting_an_output_anew_makes_it_worth_a_new_check()
    {
        await CheckAsync(millivolts: 2.7);

        _scene.Job.Append(_scene.Job.State.Fitted[9] with { LedgerSequence = 5 });

        Assert.Equal([9], _scene.Job.State.Missing(JobStage.Check));
    }

    public void Dispose() => _scene.Dispose();

    private async Task CheckAsync(double millivolts)
    {
        _scene.Begin(JobStage.Check, 9);
        var volts = millivolts / 1000 * 20;
        _scene.Meter.Level(volts, volts, volts);
        await Stage().WorkAsync(new(new(9, _scene.Tone(9), RecognisedBy.Tone), []), default);
    }

    private CheckStage Stage() => new(_scene.Bench, _scene.Levels, _scene.Job, _scene.Board, _scene.Signals);
}
