using AutoSweep.Core.Matching;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Page.Fit;

/// <summary>The search for the parts of all outputs; it may take as long as its limit.</summary>
/// <param name="record">The job.</param>
/// <param name="ledger">The stock.</param>
/// <param name="wishes">What was decided by hand.</param>
/// <param name="options">How to match.</param>
/// <param name="clock">The wall clock.</param>
public sealed class Matching(JobRecord record, StockLedger ledger, MatchWishes wishes, MatchOptions options, TimeProvider clock) : DeskWork
{
    /// <inheritdoc/>
    public override string Name => "Match";

    /// <inheritdoc/>
    public override string? Place => "parts";

    /// <inheritdoc/>
    protected override async Task WorkAsync(CancellationToken cancellationToken)
    {
        Board.Show(status => status with { Activity = BenchActivity.Reading });
        var result = await new JobMatch(record, ledger, clock).MatchAsync(wishes, options, cancellationToken);
        ResultFiles.Write(record.Folder, PickingList.From(result));
        Board.Show(status => status with { Activity = BenchActivity.Finished });
        Board.Sound(BenchSound.Done);
    }
}
