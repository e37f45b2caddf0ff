using AutoSweep.Core;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Bench;

/// <summary>An instrument that is waited for.</summary>
/// <param name="Instrument">Which one.</param>
/// <param name="Resource">Its resource name.</param>
/// <param name="Fault">What was found where it should be.</param>
public sealed record MissingInstrument(BenchInstrument Instrument, string Resource, BenchFaultException Fault);
