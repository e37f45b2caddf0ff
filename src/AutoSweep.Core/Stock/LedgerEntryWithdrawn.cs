namespace AutoSweep.Core.Stock;

/// <summary>An entry was taken back: an undo. It stays in the ledger and no longer counts.</summary>
/// <param name="Sequence">The number of the entry that is taken back.</param>
public sealed record LedgerEntryWithdrawn(long Sequence) : StockEvent;
