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

    /// <summary>How many of the job's filters have theirs written down; one of an output that has no filter counts for none.</summary>
    /// <param name="olds">The job's old capacitors by output.</param>
    /// <param name="job">The job; its profile is known.</param>
    public static int OfFilters(IReadOnlyDictionary<int, OldCapacitorRemoved> olds, JobState job) =>
        job.Profile!.FilteredOutputs.Count(output => olds.ContainsKey(output.Number));
}
