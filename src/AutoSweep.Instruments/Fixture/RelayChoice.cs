using AutoSweep.Core.Quantities;

namespace AutoSweep.Instruments.Fixture;

/// <summary>A combination of relays and what it makes.</summary>
/// <param name="Closed">The relays to close.</param>
/// <param name="Total">The calibrated total, stray included.</param>
public readonly record struct RelayChoice(RelaySet Closed, Capacitance Total);
