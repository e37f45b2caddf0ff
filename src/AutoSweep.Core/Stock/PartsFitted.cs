namespace AutoSweep.Core.Stock;

/// <summary>Parts were soldered in. They were reserved for this output before, or available.</summary>
/// <param name="Job">The job's name in the ledger.</param>
/// <param name="Output">The output's number.</param>
/// <param name="Parts">The parts' ids.</param>
public sealed record PartsFitted(string Job, int Output, IReadOnlyList<string> Parts) : StockEvent;
