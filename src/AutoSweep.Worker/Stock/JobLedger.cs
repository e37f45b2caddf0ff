using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Stock;

/// <summary>From which ledger a job's parts came: the one in its own folder, as in the demo; the one that its match names; the shop's.</summary>
public static class JobLedger
{
    /// <summary>The ledger; none where none of them is there yet.</summary>
    /// <param name="job">The job.</param>
    /// <param name="shop">The shop's ledger.</param>
    /// <param name="clock">The wall clock.</param>
    public static StockLedger? Find(JobReading job, string shop, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(job);
        string[] places = [Path.Combine(job.Folder, DataFolder.LedgerName),
            .. job.State.Matched is { } matched ? [matched.Ledger] : Array.Empty<string>(), shop];
        return places.FirstOrDefault(File.Exists) is { } path ? new(path, clock) : null;
    }
}
