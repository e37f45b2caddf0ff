using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Page.Work;

/// <summary>Where the bench computer keeps what the page works with.</summary>
public sealed record DeskOptions
{
    /// <summary>The data folder: stock, wiring, shop, jobs.</summary>
    public string Data { get; init; } = DataFolder.Default;

    /// <summary>How many times faster than the wall clock the bench's clock runs; 1 on a real bench.</summary>
    public double ClockRate { get; init; } = 1;

    /// <summary>The folder that holds one folder a job.</summary>
    public string Jobs => Path.Combine(Data, "jobs");

    /// <summary>How the bench is wired.</summary>
    public string Wiring => Path.Combine(Data, "bench.json");

    /// <summary>The stock ledger.</summary>
    public string Ledger => DataFolder.LedgerAt(Data);

    /// <summary>The shop's name and address for the record.</summary>
    public string Shop => Path.Combine(Data, Reports.ShopSettings.FileName);

    /// <summary>The name of the job that was on the bench last, so that a restart finds it again.</summary>
    public string LastJob => Path.Combine(Data, "last-job.txt");
}
