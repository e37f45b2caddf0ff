namespace AutoSweep.Sim.Benches;

/// <summary>Where a filtered output is loudest, by the network's own formula.</summary>
internal sealed record PeakTruth
{
    /// <summary>The total between the clips at the peak, stray included.</summary>
    public required double Picofarads { get; init; }

    /// <summary>Half the distance between the half-power points.</summary>
    public required double HalfWidthPicofarads { get; init; }

    /// <summary>Peak over half-width in the arrangement's own variable: 1/C in series, C otherwise.</summary>
    public required double Q { get; init; }

    public required double Millivolts { get; init; }
}
