namespace AutoSweep.Core.Stock;

/// <summary>Lines of the ledger could not be trusted and were set aside, at the wish of a person.</summary>
/// <param name="Copy">The file that keeps the ledger as it was.</param>
/// <param name="Lines">The line numbers, from 1, in that file.</param>
public sealed record LedgerLinesSetAside(string Copy, IReadOnlyList<int> Lines) : StockEvent;
