namespace AutoSweep.Core.Stock;

/// <summary>The capacitor that an output had before was taken off and measured. The latest of an output counts.</summary>
/// <param name="Job">The job's name in the ledger.</param>
/// <param name="Output">The output's number.</param>
/// <param name="Measured">What it measured; none where it does not measure as a capacitor any more.</param>
/// <param name="NominalPicofarads">Its printed value in picofarads, where it can be read.</param>
/// <param name="Note">What was odd about it.</param>
/// <param name="MadeIn">The year in which it or its generator was made, where that is known.</param>
public sealed record OldCapacitorRemoved(string Job, int Output, PartMeasurement? Measured = null, long? NominalPicofarads = null,
    string? Note = null, int? MadeIn = null) : StockEvent;
