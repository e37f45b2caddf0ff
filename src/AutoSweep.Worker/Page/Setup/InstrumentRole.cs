namespace AutoSweep.Worker.Page.Setup;

/// <summary>What an instrument is for on the bench.</summary>
public enum InstrumentRole
{
    /// <summary>Reads levels and counts tones.</summary>
    Meter,

    /// <summary>Switches capacitors.</summary>
    Fixture,

    /// <summary>Measures parts.</summary>
    CapacitanceMeter,
}
