using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Reports;

/// <summary>All that a report is made from.</summary>
/// <param name="Job">The job.</param>
/// <param name="Made">When the report is made.</param>
public sealed record ReportSource(JobReading Job, DateTimeOffset Made)
{
    /// <summary>The stock from which the job's parts came; none where it is not at hand.</summary>
    public StockState? Stock { get; init; }

    /// <summary>The shop; none for a cover with lines to fill in by hand.</summary>
    public ShopSettings? Shop { get; init; }

    /// <summary>For whom the work was done; none for a line to fill in by hand.</summary>
    public string? Customer { get; init; }

    /// <summary>The instrument that the generator belongs to, with its serial number; none for a line to fill in by hand.</summary>
    public string? Instrument { get; init; }
}
