namespace AutoSweep.Core.Stock;

/// <summary>A part was measured once more; the new value counts.</summary>
/// <param name="Part">The part's id.</param>
/// <param name="Measured">The measurement.</param>
public sealed record PartMeasuredAgain(string Part, PartMeasurement Measured) : StockEvent;
