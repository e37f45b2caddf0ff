namespace AutoSweep.Sim.Hands;

/// <summary>What the hands are at.</summary>
internal enum HandsPhase
{
    /// <summary>Every output in its order, aged capacitors in.</summary>
    Survey,

    /// <summary>Each filtered output, its aged capacitor off and the fixture clipped in its place.</summary>
    Sweep,

    /// <summary>Each part of the drawers, on the LCR meter's clips.</summary>
    Parts,

    /// <summary>The pairs that the LCR meter's display asks for, on its clips.</summary>
    Fit,

    /// <summary>Each output that parts were soldered in at, in ascending number.</summary>
    Check,

    /// <summary>The magnet rods that the level meter's display asks for.</summary>
    Level,

    /// <summary>Every output once more, in ascending number, with whatever is in the filters by now.</summary>
    AsLeft,
}
