using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Bench;

/// <summary>Asks for one output after the other and goes by the person's word: no tone needs to be counted.</summary>
/// <param name="keys">The person's keys.</param>
/// <param name="record">The job.</param>
/// <param name="board">The screens.</param>
public sealed class StepByStepClips(IOperatorKeys keys, JobRecord record, BenchBoard board) : IClipSource
{
    private readonly HashSet<int> _skipped = [];

    /// <inheritdoc/>
    public async Task<ClipVerdict> NextAsync(JobStage stage, CancellationToken cancellationToken)
    {
        while (true)
        {
            var next = Next(stage);
            // The output before must not stay: screens show the one at the clips larger than the next.
            board.Show(status => status with
            {
                Activity = BenchActivity.Waiting,
                Output = null,
                ToneHertz = null,
                Readings = [],
                Fit = null,
                Levelling = null,
                Next = next,
                Message = $"Clip output {next}, then Enter. s skips it, u takes the last result back, q stops.",
            });
            switch (await keys.ReadAsync(cancellationToken))
            {
                case OperatorKey.Go:
                    return new(new(next, null, RecognisedBy.Person), []);
                case OperatorKey.Skip:
                    _skipped.Add(next);
                    break;
                case OperatorKey.Undo:
                    TakeBack(stage);
                    break;
                case OperatorKey.Stop:
                    throw new OperationCanceledException("The person at the bench stopped the stage.");
            }
        }
    }

    /// <inheritdoc/>
    public Task<ToneSight> ConfirmAsync(int output, CancellationToken cancellationToken) =>
        Task.FromResult<ToneSight>(new ToneSight.Uncountable());

    // A skipped output comes back once the others are done: the plan has no dead ends and no holes.
    private int Next(JobStage stage)
    {
        var missing = record.State.Missing(stage).ToList();
        if (missing.All(_skipped.Contains))
            _skipped.Clear();
        return missing.First(output => !_skipped.Contains(output));
    }

    private void TakeBack(JobStage stage)
    {
        if (record.State.LastResult(stage) is not { } last)
            return;
        record.Append(new EntryWithdrawn(last.Sequence));
        _skipped.Remove(last.Output);
    }
}
