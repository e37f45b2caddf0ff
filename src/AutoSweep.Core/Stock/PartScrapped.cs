namespace AutoSweep.Core.Stock;

/// <summary>A part was thrown away.</summary>
/// <param name="Part">The part's id.</param>
/// <param name="Why">The reason in words.</param>
public sealed record PartScrapped(string Part, string Why) : StockEvent;
