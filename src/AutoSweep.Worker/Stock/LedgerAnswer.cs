using AutoSweep.Core;
using AutoSweep.Core.Stock;

namespace AutoSweep.Worker.Stock;

/// <summary>What became of an event that was offered to the ledger.</summary>
/// <param name="Entry">The entry, once the disk has it; none where it was refused or there was nothing to write.</param>
/// <param name="Refusal">Why it was not allowed; none where it was.</param>
/// <param name="State">The stock afterwards, with everything that other programs wrote before.</param>
public sealed record LedgerAnswer(StockEntry? Entry, StockRefusal? Refusal, StockState State)
{
    /// <summary>The answer, where a refusal is a fault.</summary>
    /// <exception cref="BenchFaultException">The event was refused.</exception>
    public LedgerAnswer OrFault() => Refusal is null ? this : throw Refusal.AsFault();
}
