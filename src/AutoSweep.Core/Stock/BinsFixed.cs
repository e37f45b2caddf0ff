namespace AutoSweep.Core.Stock;

/// <summary>The shop fixed the cut points of its bins, or with none gave them up for the proposal again.</summary>
/// <param name="CutsPicofarads">The cut points in picofarads, ascending; none to go by <see cref="BinPlan.For"/>.</param>
public sealed record BinsFixed(IReadOnlyList<long>? CutsPicofarads = null) : StockEvent;
