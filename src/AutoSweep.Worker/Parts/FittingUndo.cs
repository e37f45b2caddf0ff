using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Parts;

/// <summary>Takes the last fitting of a job back, in the ledger and in the journal; both keep it.</summary>
public static class FittingUndo
{
    /// <summary>Takes it back: its parts are reserved for the output again.</summary>
    /// <param name="record">The job.</param>
    /// <param name="ledger">The stock.</param>
    /// <param name="cancellationToken">Gives up waiting for the ledger.</param>
    /// <returns>The fitting.</returns>
    /// <exception cref="BenchFaultException">Nothing is fitted, or the ledger does not allow it.</exception>
    public static async Task<OutputFitted> TakeBackAsync(JobRecord record, StockLedger ledger, CancellationToken cancellationToken)
    {
        if (record.State.LastFitting is not { } last)
            throw new BenchFaultException(BenchFault.StockRefused, "nothing is fitted in this job", "a fitting to take back", "see autosweep stock log");
        (await ledger.AppendAsync(new LedgerEntryWithdrawn(last.Fitted.LedgerSequence), cancellationToken)).OrFault();
        record.Append(new EntryWithdrawn(last.Sequence));
        ResultFiles.Write(record);
        return last.Fitted;
    }
}
