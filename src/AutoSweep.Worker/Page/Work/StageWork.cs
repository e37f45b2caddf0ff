using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Worker.Page.Work;

/// <summary>A stage of the job at the generator: survey, sweep, check, levels.</summary>
/// <param name="plan">What to do.</param>
/// <param name="record">The job.</param>
/// <param name="logs">The log.</param>
public sealed class StageWork(JobPlan plan, JobRecord record, ILoggerFactory logs) : DeskWork
{
    /// <inheritdoc/>
    public override string Name => string.Join(", ", plan.Stages.Select(stage => stage.ToString()));

    /// <summary>What is done.</summary>
    public JobPlan Plan => plan;

    /// <inheritdoc/>
    protected override async Task WorkAsync(CancellationToken cancellationToken)
    {
        var outcome = new JobOutcome();
        using var worker = new JobWorker(plan, record, Board, Dialogue, Dialogue, outcome, new WorkLifetime(), logs);
        await worker.StartAsync(cancellationToken);
        await worker.ExecuteTask!;
        if (outcome.Fault is { } fault)
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(fault);
        if (outcome.ExitCode != JobOutcome.Success)
            throw new OperationCanceledException();
    }
}
