namespace AutoSweep.Sim.Benches;

/// <summary>How an output's filter is wired.</summary>
internal enum Arrangement
{
    /// <summary>Coil, capacitor, winding to ground; the level comes from a second winding. The classic arrangement.</summary>
    Series,

    /// <summary>Coil and winding in series; the level is taken across the capacitor.</summary>
    Shunt,

    /// <summary>Coil and winding coupled; the level is taken across the capacitor on the winding.</summary>
    Coupled,

    /// <summary>The level is taken between coil and winding, with the capacitor at the winding's end: a peak and a trap.</summary>
    Tapped,
}
