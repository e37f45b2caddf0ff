namespace AutoSweep.Core.Journal;

/// <summary>An instrument was lost in the middle of the work, which pauses until it is back: <see cref="BenchConnected"/> follows then.</summary>
/// <remarks>The output in hand begins anew: what was read of it before the gap does not count.</remarks>
/// <param name="Instrument">Which instrument.</param>
/// <param name="Resource">Its resource name.</param>
/// <param name="Found">How the loss was noticed, in words.</param>
public sealed record InstrumentLost(BenchInstrument Instrument, string Resource, string Found) : JournalEvent;
