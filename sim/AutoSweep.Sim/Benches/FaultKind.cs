namespace AutoSweep.Sim.Benches;

/// <summary>What can be planted wrong in the generator.</summary>
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
}
