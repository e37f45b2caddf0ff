namespace AutoSweep.Core.Stock;

/// <summary>Measured parts came into the stock.</summary>
/// <param name="Parts">The parts, each with a new id; all available.</param>
/// <param name="Source">Where they came from: a file, the meter, a keyboard.</param>
public sealed record PartsTakenIn(IReadOnlyList<Part> Parts, string? Source = null) : StockEvent;
