using AutoSweep.Core.Journal;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Parts;

/// <summary>Writes down in a job what the ledger says was fitted for it. The ledger comes first, so a program that is killed between the two leaves an output
/// fitted in the stock that the job knows nothing of.</summary>
public static class FittingRepair
{
    /// <summary>Completes the job's journal.</summary>
    /// <param name="record">The job.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="jobName">The job's name in the ledger.</param>
    /// <param name="targets">What the outputs want.</param>
    /// <returns>The outputs that were written down.</returns>
    public static IReadOnlyList<int> Complete(JobRecord record, StockState stock, string jobName, IReadOnlyList<MatchTarget> targets)
    {
        var held = stock.HeldBy(jobName, PartStatus.Fitted);
        List<int> written = [];
        foreach (var target in targets.Where(target => held.ContainsKey(target.Output) && !record.State.Fitted.ContainsKey(target.Output)))
        {
            record.Append(Fitted(target, Combination.Of(held[target.Output]), SequenceOf(stock, jobName, target.Output)));
            written.Add(target.Output);
        }

        return written;
    }

    // What the last measurement before the soldering read is lost with the program; that it agreed with the ledger is why the ledger says fitted.
    private static OutputFitted Fitted(MatchTarget target, Combination parts, long sequence) => new()
    {
        Output = target.Output,
        Parts = [.. parts.Parts.Select(part => part.Id)],
        MeasuredPicofarads = parts.Sum.Picofarads,
        StandardUncertaintyPicofarads = Math.Sqrt(parts.Variance),
        WantedPicofarads = target.Wanted.Picofarads,
        LossDecibels = new LevelLoss(target).Decibels(parts.Sum.Picofarads, parts.Variance),
        Meter = parts.Parts[0].Measured.Meter,
        LedgerSequence = sequence,
    };

    private static long SequenceOf(StockState stock, string jobName, int output) => stock.Entries
        .Last(entry => entry.Event is PartsFitted fitted && fitted.Job == jobName && fitted.Output == output && !stock.Idle.Contains(entry.Sequence)).Sequence;
}
