using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.AtBench;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Worker.Page.Work;

/// <summary>A stage of the job at the generator: survey, sweep, check, levels.</summary>
/// <param name="plan">What to do.</param>
/// <param name="record">The job.</param>
/// <param name="logs">The log.</param>
/// <param name="clock">The wall clock, which the person's patience goes by.</param>
public sealed class StageWork(JobPlan plan, JobRecord record, ILoggerFactory logs, TimeProvider clock) : DeskWork
{
    private readonly StageClock _pace = new(clock);

    /// <inheritdoc/>
    public override string Name => string.Join(", ", plan.Stages.Select(StepWords.Name));

    /// <summary>What is done.</summary>
    public JobPlan Plan => plan;

    /// <summary>The readings of the output at the clips, with their places in the journal.</summary>
    public LiveReadings Readings { get; private set; } = LiveReadings.None;

    /// <summary>The time left in words; empty before two outputs have set a pace.</summary>
    public string TimeLeft { get; private set; } = "";

    /// <inheritdoc/>
    protected override async Task WorkAsync(CancellationToken cancellationToken)
    {
        var outcome = new JobOutcome();
        using var worker = new JobWorker(plan, record, Board, Dialogue, Dialogue, outcome, new WorkLifetime(), logs);
        record.Appended += Follow;
        try
        {
            await worker.StartAsync(cancellationToken);
            await worker.ExecuteTask!;
        }
        finally
        {
            record.Appended -= Follow;
        }

        if (outcome.Fault is { } fault)
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(fault);
        if (outcome.ExitCode != JobOutcome.Success)
            throw new OperationCanceledException();
    }

    // On the worker's thread, one entry after the other; screens read what is whole.
    private void Follow(JournalEntry entry)
    {
        Readings = Readings.Apply(entry);
        var stage = plan.Stages[^1];
        if (record.State.Planned.TryGetValue(stage, out var planned))
            TimeLeft = _pace.Remaining(stage, planned.Count(output => record.State.IsDone(stage, output)), planned.Count);
        Tell();
    }
}
