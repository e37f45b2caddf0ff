namespace AutoSweep.Core.Stock;

/// <summary>A job gave reserved or fitted parts back: they are available again.</summary>
/// <param name="Job">The job's name in the ledger.</param>
/// <param name="Parts">The parts' ids.</param>
public sealed record PartsReleased(string Job, IReadOnlyList<string> Parts) : StockEvent;
