namespace AutoSweep.Worker.Stock;

/// <summary>How benches wait for each other at one ledger.</summary>
public sealed record StockLedgerOptions
{
    /// <summary>How long to wait for the others before saying so.</summary>
    /// <value>20 seconds: a transaction holds the lock for about a millisecond (measured, docs/stock.md), so whoever waits this long
    /// waits for a stopped program, not for a busy shop.</value>
    public TimeSpan Patience { get; init; } = TimeSpan.FromSeconds(20);

    /// <summary>How long to wait before the lock is tried again.</summary>
    /// <value>15 ms: not felt by a person, and time for a dozen others. The system has no call that waits for a lock and can be
    /// cancelled.</value>
    public TimeSpan RetryAfter { get; init; } = TimeSpan.FromMilliseconds(15);
}
