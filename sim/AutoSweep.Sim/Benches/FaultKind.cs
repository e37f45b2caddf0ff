namespace AutoSweep.Sim.Benches;

/// <summary>What can be planted wrong in the generator.</summary>
/// <remarks>The first four act while the bench is served; the others are in the bench's own figures already, and the list tells which.</remarks>
internal enum FaultKind
{
    /// <summary>A broken coil: neither tone nor hum.</summary>
    Dead,

    /// <summary>A wheel that does not turn: hum alone.</summary>
    HumOnly,

    /// <summary>Two terminals wired the wrong way round.</summary>
    Swapped,

    /// <summary>A level that comes and goes slowly.</summary>
    Unsteady,

    /// <summary>An old capacitor of another value than the filter wants.</summary>
    CapacitorDrifted,

    /// <summary>An old capacitor of which leads and stray are left.</summary>
    CapacitorOpen,

    /// <summary>An old capacitor of high loss.</summary>
    CapacitorLeaky,

    /// <summary>A magnet that gives too little.</summary>
    WeakMagnet,

    /// <summary>A magnet that gives too much.</summary>
    StrongMagnet,

    /// <summary>A wheel that wobbles far more than usual.</summary>
    UnsteadyWheel,

    /// <summary>A mains off its frequency; the motor follows it.</summary>
    MainsOff,

    /// <summary>A motor that drags behind its mains.</summary>
    MotorSlow,

    /// <summary>A front end of too little input resistance.</summary>
    MeterLoading,
}
