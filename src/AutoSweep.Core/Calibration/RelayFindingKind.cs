namespace AutoSweep.Core.Calibration;

/// <summary>What can be wrong with a relay or its capacitor.</summary>
public enum RelayFindingKind
{
    /// <summary>Closing it adds nothing, and the open fixture holds no capacitor: its contact stays open.</summary>
    StuckOpen,

    /// <summary>Closing it adds nothing because its capacitor is always there: its contact stays closed.</summary>
    StuckClosed,

    /// <summary>Closing it adds nothing; whether it stays open or closed cannot be told from the stray.</summary>
    DoesNotSwitch,

    /// <summary>Its capacitor or its insulation loses far more than the others when closed.</summary>
    Leaking,

    /// <summary>Its open contact leaks: closing it takes a loss away.</summary>
    LeakingWhileOpen,

    /// <summary>It adds another capacitance beside other relays than alone.</summary>
    OffWhenCombined,

    /// <summary>It follows at times and at times not.</summary>
    Intermittent,

    /// <summary>It adds less than half or more than double of what its place in the decades says.</summary>
    UnlikelyValue,

    /// <summary>The readings do not add up, and no single relay explains it.</summary>
    NotAdditive,
}
