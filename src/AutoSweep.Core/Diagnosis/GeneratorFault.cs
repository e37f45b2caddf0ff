namespace AutoSweep.Core.Diagnosis;

/// <summary>What can be wrong with a generator, or with the way in which it is measured, as far as the job's readings can tell.</summary>
public enum GeneratorFault
{
    /// <summary>Neither tone nor hum: a broken pickup coil or its lead.</summary>
    DeadPickup,

    /// <summary>The tone at a terminal is another output's.</summary>
    MiswiredTerminals,

    /// <summary>The filter's capacitor is another value than the coil wants.</summary>
    CapacitorDrifted,

    /// <summary>The filter's capacitor, or its joint, does not conduct.</summary>
    CapacitorOpen,

    /// <summary>The filter's capacitor has so much loss that the level suffers.</summary>
    CapacitorLeaky,

    /// <summary>The level lies under the curve and the filter does not explain it: the magnet stands too far off, or is weak.</summary>
    WeakMagnet,

    /// <summary>The level lies over the curve: the magnet stands too near.</summary>
    StrongMagnet,

    /// <summary>The level swings as the wheel turns, more than its neighbours' do: run-out, a bent shaft, a loose wheel.</summary>
    UnsteadyWheel,

    /// <summary>The mains' hum where a tone should be: the wheel does not turn.</summary>
    HumWithoutTone,

    /// <summary>All tones are off by one ratio: the mains, or a motor that is not in step with it.</summary>
    OffSpeed,

    /// <summary>What is clipped on loads the outputs and takes level from those of high impedance.</summary>
    MeterLoading,
}
