using AutoSweep.Worker.Job;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Page.Record;

/// <summary>From which ledger a job's parts came: the one in its own folder, the one that its match names, the shop's.</summary>
public static class JobLedger
{
    /// <summary>The ledger; the shop's where none of them is there yet.</summary>
    /// <param name="job">The job.</param>
    /// <param name="shop">The shop's ledger.</param>
    /// <param name="clock">The wall clock.</param>
    public static StockLedger Of(JobReading job, string shop, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(job);
        string[] places = [Path.Combine(job.Folder, DataFolder.LedgerName),
            .. job.State.Matched is { } matched ? [matched.Ledger] : Array.Empty<string>(), shop];
        return new(places.FirstOrDefault(File.Exists) ?? shop, clock);
    }
}
