using System.Text.Json.Serialization;

namespace AutoSweep.Core.Stock;

/// <summary>Something that happened to the stock, as its ledger keeps it for ever. An event happens whole or not at all.</summary>
/// <remarks>
/// Names and fields are the file format: a field may be added with a default, none may change its meaning. Folding them is the
/// business of <see cref="StockState"/>.
/// </remarks>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(PartsTakenIn), "partsTakenIn")]
[JsonDerivedType(typeof(PartMeasuredAgain), "partMeasuredAgain")]
[JsonDerivedType(typeof(PartsReserved), "partsReserved")]
[JsonDerivedType(typeof(PartsReleased), "partsReleased")]
[JsonDerivedType(typeof(PartsFitted), "partsFitted")]
[JsonDerivedType(typeof(PartScrapped), "partScrapped")]
[JsonDerivedType(typeof(OldCapacitorRemoved), "oldCapacitorRemoved")]
[JsonDerivedType(typeof(BinsFixed), "binsFixed")]
[JsonDerivedType(typeof(LedgerEntryWithdrawn), "entryWithdrawn")]
[JsonDerivedType(typeof(LedgerLinesSetAside), "linesSetAside")]
public abstract record StockEvent;
