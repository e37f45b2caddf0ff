namespace AutoSweep.Core.Journal;

/// <summary>The instruments that a stage works with.</summary>
public enum BenchInstrument
{
    /// <summary>The meter that reads levels and counts tones.</summary>
    Meter,

    /// <summary>The fixture that sets capacitances.</summary>
    Fixture,
}
