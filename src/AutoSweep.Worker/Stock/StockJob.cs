using System.Globalization;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Stock;

/// <summary>A job as the ledger names it.</summary>
public static class StockJob
{
    /// <summary>The generator's name and the instant at which the job was opened: the same wherever the job's folder goes.</summary>
    public static string NameOf(JobState state) => string.Create(
        CultureInfo.InvariantCulture, $"{state.Profile!.Name}, opened {state.OpenedAt!.Value.UtcDateTime:yyyy-MM-ddTHH:mm:ss.fffffffZ}");
}
