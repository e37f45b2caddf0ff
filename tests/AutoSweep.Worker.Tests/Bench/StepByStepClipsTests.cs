using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class StepByStepClipsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly JobRecord _job;

    public StepByStepClipsTests()
    {
        _job = Some.Job(_folder);
        _job.Append(new StageStarted(JobStage.Sweep, [9, 10]));
    }

    [Fact]
    public async Task Outputs_are_asked_for_in_ascending_order()
    {
        Assert.Equal(9, await NextAsync(OperatorKey.Go));
    }

    [Fact]
    public async Task A_skipped_output_comes_back_when_the_others_are_done()
    {
        var clips = Clips(OperatorKey.Skip, OperatorKey.Go, OperatorKey.Go);

        Assert.Equal(10, (await clips.NextAsync(JobStage.Sweep, default)).Clipped!.Output);
        _job.Append(Some.Swept(10));
        Assert.Equal(9, (await clips.NextAsync(JobStage.Sweep, default)).Clipped!.Output);
    }

    [Fact]
    public async Task Undo_takes_the_last_result_back_and_asks_for_that_output_again()
    {
        _job.Append(Some.Swept(9));

        Assert.Equal(9, await NextAsync(OperatorKey.Undo, OperatorKey.Go));
    }

    [Fact]
    public async Task Undo_with_nothing_to_take_back_does_no_harm()
    {
        Assert.Equal(9, await NextAsync(OperatorKey.Undo, OperatorKey.Undo, OperatorKey.Go));
    }

    // A screen shows the output at the clips larger than the next one: whoever went by it clipped the output before once more.
    [Fact]
    public async Task While_an_output_is_asked_for_the_one_before_stands_on_no_screen()
    {
        _job.Append(Some.Swept(9));
        var board = new BenchBoard();
        board.Show(status => status with { Activity = BenchActivity.Done, Output = 9, ToneHertz = 880 });
        List<BenchStatus> shown = [];
        board.Changed += shown.Add;

        await new StepByStepClips(new FakeKeys(OperatorKey.Go), _job, board).NextAsync(JobStage.Sweep, default);

        Assert.All(shown, status => Assert.Equal((BenchActivity.Waiting, null, null, 10), (status.Activity, status.Output, status.ToneHertz, status.Next)));
        Assert.NotEmpty(shown);
    }

    [Fact]
    public async Task Stop_ends_the_stage()
    {
        await Assert.ThrowsAsync<OperationCanceledException>(() => NextAsync(OperatorKey.Stop));
    }

    public void Dispose()
    {
        _job.Dispose();
        _folder.Dispose();
    }

    private async Task<int> NextAsync(params OperatorKey[] keys) => (await Clips(keys).NextAsync(JobStage.Sweep, default)).Clipped!.Output;

    private StepByStepClips Clips(params OperatorKey[] keys) => new(new FakeKeys(keys), _job, new BenchBoard());
}
