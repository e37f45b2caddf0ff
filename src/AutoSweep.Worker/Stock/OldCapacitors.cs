using AutoSweep.Core.Journal;
using AutoSweep.Core.Stock;

namespace AutoSweep.Worker.Stock;

/// <summary>What the capacitors that came off in a job measured.</summary>
public static class OldCapacitors
{
    /// <summary>The job's old capacitors by output; empty where nobody logged any.</summary>
    /// <param name="stock">The stock, whose ledger keeps them.</param>
    /// <param name="job">The job.</param>
    public static IReadOnlyDictionary<int, OldCapacitorRemoved> Of(StockState stock, JobState job)
    {
        var name = StockJob.NameOf(job);
        return stock.OldCapacitors.Values.Where(old => old.Job == name).ToDictionary(old => old.Output);
    }
}
