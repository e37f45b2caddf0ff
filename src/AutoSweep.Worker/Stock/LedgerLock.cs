using AutoSweep.Core;

namespace AutoSweep.Worker.Stock;

/// <summary>The right to change a ledger: one holder at a time among all programs of the machine or the shared folder.</summary>
/// <remarks>The kernel drops the lock when its holder dies, however it dies. The file is never deleted: another may be waiting for
/// it.</remarks>
public static class LedgerLock
{
    /// <summary>Waits for the lock.</summary>
    /// <param name="path">The lock file.</param>
    /// <param name="options">How long.</param>
    /// <param name="clock">Tells the time to wait.</param>
    /// <param name="cancellationToken">Gives up.</param>
    /// <returns>The lock; dispose it to release.</returns>
    /// <exception cref="BenchFaultException">Others hold it for too long, or the file cannot be made.</exception>
    public static async Task<IDisposable> TakeAsync(string path, StockLedgerOptions options, TimeProvider clock,
        CancellationToken cancellationToken)
    {
        var began = clock.GetTimestamp();
        while (true)
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException fault) when (fault is not (DirectoryNotFoundException or PathTooLongException))
            {
                if (clock.GetElapsedTime(began) > options.Patience)
                    throw InUse(path, options, fault);
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                throw new BenchFaultException(BenchFault.BadFile, $"{path} cannot be opened ({fault.Message})",
                    "a data folder that this user may write",
                    "mend the permissions, or name another", fault) { AtTerminal = "--stock" };
            }

            await Task.Delay(options.RetryAfter, clock, cancellationToken);
        }
    }

    private static BenchFaultException InUse(string path, StockLedgerOptions options, Exception fault) => new(
        BenchFault.StockInUse, FormattableString.Invariant($"another program has held {path} for {options.Patience.TotalSeconds:0} s"),
        "a lock that is free again within milliseconds", "look for an AutoSweep that is stopped or hangs, and close it", fault);
}
