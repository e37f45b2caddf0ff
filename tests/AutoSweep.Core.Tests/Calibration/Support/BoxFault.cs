namespace AutoSweep.Core.Tests.Calibration.Support;

/// <summary>What is wrong with a simulated box's relay.</summary>
public enum BoxFault
{
    None,
    StuckOpen,
    StuckClosed,

    /// <summary>A resistance across its capacitor.</summary>
    Leaking,

    /// <summary>A resistance across its open contact.</summary>
    LeakingWhileOpen,

    /// <summary>It fails to close once in five times.</summary>
    Intermittent,

    /// <summary>It adds 2 % more beside other relays than alone.</summary>
    OffWhenCombined,
}
