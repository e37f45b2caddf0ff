using AutoSweep.Core;
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

    /// <summary>The name of the file that says how the bench is wired. A simulated bench has one of its own, so that it never writes over a real one's.</summary>
    public string WiringName { get; init; } = "bench.json";

    /// <summary>How the bench is wired.</summary>
    public string Wiring => Path.Combine(Data, WiringName);

    /// <summary>The stock ledger.</summary>
    public string Ledger => DataFolder.LedgerAt(Data);

    /// <summary>The shop's name and address for the record.</summary>
    public string Shop => Path.Combine(Data, Reports.ShopSettings.FileName);

    /// <summary>The name of the job that was on the bench last, so that a restart finds it again.</summary>
    public string LastJob => Path.Combine(Data, "last-job.txt");

    /// <summary>Makes the data folder where it is not there yet, and tries whether it can be written.</summary>
    /// <exception cref="BenchFaultException">It cannot: better told before the first reading than after it.</exception>
    public void RequireWritable()
    {
        try
        {
            Directory.CreateDirectory(Jobs);
            TryWriting(Data);
            TryWriting(Jobs);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BenchFaultException(BenchFault.NotReachable, $"{Data} cannot be written ({fault.Message})", "a data folder that this user may write",
                "mend its permissions or the disk, or name another folder", fault) { AtTerminal = "--data" };
        }
    }

    // Permissions alone do not tell: the disk may be full, or mounted to be read only.
    private static void TryWriting(string folder)
    {
        using var trial = new FileStream(
            Path.Combine(folder, Path.GetRandomFileName()), FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
        trial.WriteByte(0);
    }
}
