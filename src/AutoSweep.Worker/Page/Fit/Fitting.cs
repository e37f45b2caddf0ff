using AutoSweep.Core;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Intake;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Page.Fit;

/// <summary>Parts go into outputs: asked for, measured, soldered in.</summary>
/// <param name="record">The job.</param>
/// <param name="fit">How it is walked and what is accepted.</param>
/// <param name="wiring">The bench; none where nothing is wired.</param>
/// <param name="options">How parts are measured.</param>
/// <param name="desk">Where the stock is, and the bench's clock.</param>
/// <param name="clock">The wall clock.</param>
public sealed class Fitting(JobRecord record, FitOptions fit, BenchWiring? wiring, PartOptions options, DeskOptions desk, TimeProvider clock)
    : PartWork(wiring, options, desk, clock)
{
    private readonly TimeProvider _clock = clock;

    /// <inheritdoc/>
    public override string Name => "Parts go in";

    /// <inheritdoc/>
    public override string? Place => "parts";

    /// <summary>The last journal entry before the work began: what was fitted since is after it.</summary>
    public long Before { get; private set; }

    /// <inheritdoc/>
    /// <exception cref="BenchFaultException">Nothing is matched.</exception>
    private protected override async Task WorkAsync(IPartSource parts, CancellationToken cancellationToken)
    {
        var (job, stock) = (StockJob.NameOf(record.State), Ledger.Read());
        if (stock.HeldBy(job, PartStatus.Reserved).Count == 0)
            throw new BenchFaultException(BenchFault.StockRefused, "no parts are reserved for this job", "a match", "match first, on this page");
        Before = record.State.Sequence;
        var next = new NextBest(new MatchOptions { LossLimitDecibels = fit.LossLimitDecibels }, _clock);
        try
        {
            await new PartFitting(parts, Ledger, record, job, next, fit, Lines).RunAsync(MatchTargets.Of(record.State, 0), cancellationToken);
        }
        finally
        {
            ResultFiles.Write(record);
        }
    }
}
