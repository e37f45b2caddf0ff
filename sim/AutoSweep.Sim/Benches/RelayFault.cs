namespace AutoSweep.Sim.Benches;

/// <summary>What can be wrong with a relay's contact or capacitor; its coil, and so the read-back, is always right.</summary>
internal enum RelayFault
{
    /// <summary>The contact never closes.</summary>
    StuckOpen,

    /// <summary>The contact never opens.</summary>
    StuckClosed,

    /// <summary>The capacitor has a loss tangent of 0.05.</summary>
    Leaking,
}
